import { useLocation } from 'preact-iso';
import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useSession } from '../session/session.js';
import { Choice, Field } from '../shell/fields.js';
import { useSettled } from '../shell/use-settled.js';
import { withOffset } from '../words/time.js';
import { capital } from '../words/words.js';
import type { ActFormProps } from './act-form-props.js';
import { CorrectedValue, inWords, isTime } from './corrected-value.js';
import { SignForm } from './sign-form.js';

type Line = Schemas['HistoryLine'];
type Correctable = Schemas['Correctable'];

/** Something was mistyped. What was written stays readable, struck, in the history. */
export function CorrectForm(props: ActFormProps) {
  const { query } = useLocation();
  const { history } = props.view;
  const line = history.find(({ id }) => id === query['of']) ?? history[0];
  if (!line) return null;
  return (
    <>
      <blockquote>{line.words}</blockquote>
      <p class="soft">
        {line.by}, <EnteredAt line={line} />
      </p>
      {line.correctable.length === 0 ? (
        <p>Nothing of this entry can be corrected.</p>
      ) : (
        <Form {...props} line={line} />
      )}
      <Otherwise line={line} />
    </>
  );
}

function EnteredAt({ line }: { line: Line }) {
  const { operator } = useSession();
  return <>entered {withOffset(line.enteredAt, operator.base)}</>;
}

const keyOf = ({ field, part }: Correctable): string => `${field}/${part}`;

function Form({ view, seen, done, readAgain, line }: ActFormProps & { line: Line }) {
  const { id } = view.defect;
  const { operator } = useSession();
  const [chosen, setChosen] = useState<string | null>(null);
  const [now, setNow] = useState('');
  const [reason, setReason] = useState('');
  const settled = useSettled(now);
  const what = line.correctable.find((one) => keyOf(one) === chosen);
  const said = what && { of: line.id, field: what.field, part: what.part };
  const ready = what && settled.trim() !== '' && settled !== what.reads;
  const query =
    what &&
    new URLSearchParams({ act: 'correct', of: line.id, field: what.field, part: String(what.part), now: settled });

  function choose(key: string): void {
    const found = line.correctable.find((one) => keyOf(one) === key);
    setChosen(key);
    setNow(found && !isTime(found.field) ? (found.reads ?? '') : '');
  }

  return (
    <SignForm<Schemas['ActDone']>
      statementPath={ready && query ? `/defects/${id}/statement?${query.toString()}` : null}
      path={`/defects/${id}/correction`}
      seen={seen}
      readAgain={readAgain}
      body={() => ({ ...said, now, reason })}
      button={what?.secondLook ? 'Sign: it is mistyped' : 'Sign: corrected'}
      done={() =>
        done(
          what?.secondLook
            ? 'Asked for. All stands as it was until another person has looked and signed.'
            : 'Corrected. What was written stays in the history.',
        )
      }
    >
      <Choice
        legend="What was mistyped"
        options={line.correctable.map((one) => ({
          value: keyOf(one),
          text: `${capital(one.words)}: ${inWords(one, operator.base)}`,
        }))}
        value={chosen}
        onValue={choose}
      />
      {what && (
        <>
          {what.secondLook && (
            <p>
              <strong>It decides something.</strong> Another person looks and signs before it reads otherwise
              {view.defect.state === 'closed' ? '.' : ', and the aircraft does not leave until then.'}
            </p>
          )}
          <CorrectedValue key={chosen} what={what} value={now} onValue={setNow} />
          <Field
            label="Why it is corrected"
            lines={2}
            most={1000}
            value={reason}
            onValue={setReason}
            pointer="/reason"
            required
          />
        </>
      )}
    </SignForm>
  );
}

/** What would change an answer or an interval, and what to do instead. */
function Otherwise({ line: { otherwise } }: { line: Line }) {
  if (otherwise.length === 0) return null;
  return (
    <section>
      <h2>Put right otherwise</h2>
      <p class="soft">No correction touches what decides an answer, an interval, or who answers for what.</p>
      <dl>
        {otherwise.map(({ field, words, because, instead }) => (
          <div key={field}>
            <dt class="strong">
              {capital(words)}: {because}
            </dt>
            <dd>{instead}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
