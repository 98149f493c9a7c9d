import type { Schemas } from '../api/client.js';
import { useSession } from '../session/session.js';
import { withOffset } from '../words/time.js';

/** What was written, struck and readable, what it reads since, who says so and why. */
export function CorrectionLine({ line }: { line: Schemas['CorrectionLine'] }) {
  const { operator } = useSession();
  const { field, was, now, by, looked, at, reason } = line;
  return (
    <p class="correction">
      Corrected, {field}: <s>{was ?? 'nothing'}</s> <ins>{now}</ins>
      <span class="soft block">
        {by}
        {looked && `, looked at by ${looked}`}, {withOffset(at, operator.base)}: {reason}
      </span>
    </p>
  );
}
