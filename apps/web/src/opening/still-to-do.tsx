import type { Schemas } from '../api/client.js';
import { useRead } from '../api/use-read.js';
import { useSession } from '../session/session.js';
import { anyOf } from '../words/words.js';

/** Without these nothing is judged or signed; the others are good advice beside them. */
const NEEDED = ['stations', 'aircraft', 'mel', 'organisations', 'authorisations'];

/** What a new operator still needs before its first aircraft can be judged; nothing once it has all of it. */
export function StillToDo() {
  const { roles, operator } = useSession();
  const { value } = useRead<Schemas['Opening']>('/opening');
  const missing = (value?.steps ?? []).filter(({ done }) => !done);
  if (!missing.some(({ step }) => NEEDED.includes(step))) return null;
  return (
    <section class="caution" aria-label="Still to do">
      <p class="strong">Before {operator.name} can judge its first aircraft:</p>
      <ol>
        {missing.map(({ step, what, by, page }) => (
          <li key={step}>
            {by.some((role) => roles.includes(role)) ? <a href={page}>{what}</a> : `${what}: for ${anyOf(by)}`}
          </li>
        ))}
      </ol>
    </section>
  );
}
