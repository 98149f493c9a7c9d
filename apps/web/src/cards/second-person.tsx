import { useId } from 'preact/hooks';
import { useSession } from '../session/session.js';
import { passkeyFor, passkeysHere } from '../session/passkey.js';
import { Choice, Field } from '../shell/fields.js';
import { roleWords } from '../words/words.js';
import type { CardView, Step } from './step-props.js';

const isSecond = ({ kind }: Step['needs'][number]): boolean => kind === 'second-person';

/** Whether the step, as it stands, is begun or done with somebody else there. */
export const asksForTwo = ({ needs, state, kind }: Step): boolean =>
  needs.some(isSecond) && (state === 'next' || !['wait', 'run'].includes(kind));

/** Who is there, and by what they sign; the secret lives in the form only. */
export interface Second {
  person: string;
  how: 'secret' | 'passkey';
  secret: string;
}

export const NOBODY: Second = { person: '', how: 'secret', secret: '' };

/** What is sent of the second person; a passkey is asked for at this moment. Throws Problem. */
export async function secondOf(
  { defect, work }: CardView,
  step: Step,
  { person, how, secret }: Second,
  statement: string | null,
): Promise<object> {
  const shown = statement === null ? {} : { statement };
  if (how === 'secret') return { person, secret, ...shown };
  const passkey = await passkeyFor(`/defects/${defect.id}/card-seconds`, {
    work: work.id,
    step: step.id,
    person,
    ...shown,
  });
  return { person, passkey, ...shown };
}

const WAYS = [
  { value: 'secret', text: 'their secret' },
  { value: 'passkey', text: 'a passkey of their own' },
] as const;

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
          onChange={(event) => onSecond({ ...second, person: event.currentTarget.value, secret: '' })}
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
          {passkeysHere() && (
            <Choice
              legend={`${named.name} signs with`}
              options={WAYS}
              value={second.how}
              onValue={(how) => onSecond({ ...second, how, secret: '' })}
            />
          )}
          {second.how === 'secret' && (
            <Field
              label={`Secret of ${named.name}, to sign this`}
              type="password"
              value={second.secret}
              onValue={(secret) => onSecond({ ...second, secret })}
              pointer="/second/secret"
              required
            />
          )}
        </section>
      )}
    </>
  );
}
