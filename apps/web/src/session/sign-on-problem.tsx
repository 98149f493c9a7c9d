import type { Schemas } from '../api/client.js';
import { useRead } from '../api/use-read.js';

/** Why a sign-on opened nothing, in the server's own words. */
export function SignOnProblem({ code }: { code: string }) {
  const { value } = useRead<Schemas['ProblemTypes']>('/problems');
  const found = value?.problems.find(({ type }) => type === `/api/problems/${code}`);
  if (!found) return null;
  return (
    <div role="alert" class="problem">
      <p class="strong">{found.title}</p>
      <p>
        <strong>What to do:</strong> {found.next}
      </p>
    </div>
  );
}
