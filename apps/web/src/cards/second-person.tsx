import { useId } from 'preact/hooks';
import { useSession } from '../session/session.js';
import { Field } from '../shell/fields.js';
import { roleWords } from '../words/words.js';
import type { CardView, Step } from './step-props.js';

const isSecond = ({ kind }: Step['needs'][number]): boolean => kind === 'second-person';

/** Whether the step, as it stands, is begun or done with somebody else there. */
export const asksForTwo = ({ needs, state, kind }: Step): boolean =>
  needs.some(isSecond) && (state === 'next' || !['wait', 'run'].includes(kind));

/** Who is there, and their own secret; it lives in the form only. */
export interface Second {
  person: string;
  secret: string;
}

interface SecondPersonProps {
  view: CardView;
  step: Step;
  second: Second;
  onSecond(second: Second): void;
  /** What is certified; null while it is read. */
  statement: string | null;
}

/** The second person signs here, on the device of whoever does the step, who stays signed in. */
export function SecondPerson({ view: { people }, step, second, onSecond, statement }: SecondPersonProps) {
  const { person } = useSession();
  const id = useId();
  const asked = step.needs.find(isSecond);
  const named = people.find((one) => one.id === second.person);
  return (
    <>
      <div class="field">
        <label for={id}>Second person, there with you</label>
        <p class="hint" id={`${id}-hint`}>
          The card asks for {asked?.what}
          {asked && asked.licence.length > 0 && `, licence ${asked.licence.join(' or ')}`}.
        </p>
        <select
          id={id}
          required
          value={second.person}
          aria-describedby={`${id}-hint`}
          onChange={(event) => onSecond({ person: event.currentTarget.value, secret: '' })}
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
      {named && (
        <section class="signing" aria-labelledby={`${id}-signs`}>
          <h2 id={`${id}-signs`}>{named.name} certifies</h2>
          <blockquote>{statement ?? 'Reading what is certified…'}</blockquote>
          <p class="soft">Hand the device over. {person.name} stays signed in.</p>
          <Field
            label={`Secret of ${named.name}, to sign this`}
            type="password"
            value={second.secret}
            onValue={(secret) => onSecond({ ...second, secret })}
            pointer="/second/secret"
            required
          />
        </section>
      )}
    </>
  );
}
