import { useId } from 'preact/hooks';
import { useSession } from '../session/session.js';
import { roleWords } from '../words/words.js';
import type { CardView, Step } from './step-props.js';

/** Whether the step, as it stands, is begun or done with somebody else there. */
export const asksForTwo = ({ needs, state, kind }: Step): boolean =>
  needs.some((need) => need.kind === 'second-person') && (state === 'next' || !['wait', 'run'].includes(kind));

interface SecondPersonProps {
  people: CardView['people'];
  what: string;
  value: string;
  onValue(id: string): void;
}

/** Who is there: whoever does the step says so, and is never the second person as well. */
export function SecondPerson({ people, what, value, onValue }: SecondPersonProps) {
  const { person } = useSession();
  const id = useId();
  return (
    <div class="field">
      <label for={id}>Second person, there with you</label>
      <p class="hint" id={`${id}-hint`}>
        The card asks for {what}.
      </p>
      <select
        id={id}
        required
        value={value}
        aria-describedby={`${id}-hint`}
        onChange={(event) => onValue(event.currentTarget.value)}
      >
        <option value="">Choose who is there</option>
        {people
          .filter((one) => one.id !== person.id)
          .map((one) => (
            <option key={one.id} value={one.id}>
              {one.name}, {one.roles.map(roleWords).join(', ')}
            </option>
          ))}
      </select>
    </div>
  );
}
