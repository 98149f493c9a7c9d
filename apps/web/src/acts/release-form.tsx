import { useState } from 'preact/hooks';
import { LeftList } from '../item/left-list.js';
import { Choice, Field, Tick } from '../shell/fields.js';
import { useSettled } from '../shell/use-settled.js';
import type { ActFormProps } from './act-form-props.js';
import { GoneOverTicks, NOT_GONE_OVER } from './gone-over.js';
import { SignForm } from './sign-form.js';
import type { Schemas } from '../api/client.js';

type Outcome = 'closed' | 'stays-open';

const OUTCOMES = [
  { value: 'closed', text: 'The work is complete, and the item is closed' },
  { value: 'stays-open', text: 'The work is released, and the item stays open' },
] as const;

/** Releases the work: with the item closed, or with what stays open stated. What is still missing the server says. */
export function ReleaseForm({ view, seen, done, readAgain }: ActFormProps) {
  const { left, openWork, defect } = view;
  const [outcome, setOutcome] = useState<Outcome>(openWork?.complete === false ? 'stays-open' : 'closed');
  const stopped = openWork?.stopped ?? [];
  const [open, setOpen] = useState(stopped.join('\n'));
  const [gone, setGone] = useState(NOT_GONE_OVER);
  const [minor, setMinor] = useState(false);
  const lines = open.split('\n').filter((line) => line.trim() !== '');
  const staysOpen = outcome === 'stays-open' ? lines : [];
  const settled = useSettled(staysOpen.join('; '));
  const verified = openWork?.verified === true ? {} : { verified: gone };
  const stated = staysOpen.length > 0 ? { staysOpen } : {};
  return (
    <>
      {left.length > 0 && outcome === 'closed' && (
        <>
          <p class="strong">Still left on the aircraft for this item:</p>
          <LeftList left={left} own />
          <p>
            <a class="button" href={`/defects/${defect.id}/undone`}>
              Undo what is left
            </a>
          </p>
        </>
      )}
      <SignForm<Schemas['ActDone']>
        statementPath={`/defects/${defect.id}/statement?${query(settled)}`}
        path={`/defects/${defect.id}/release`}
        seen={seen}
        readAgain={readAgain}
        body={() => ({ outcome, ...stated, ...verified, asMinorTask: minor })}
        button="Sign: release to service"
        done={() =>
          done(
            outcome === 'closed'
              ? 'Released to service. The item is closed.'
              : 'The work is released. The item stays open.',
          )
        }
      >
        <Choice legend="What is released" options={OUTCOMES} value={outcome} onValue={setOutcome} />
        {outcome === 'stays-open' && (
          <Field
            label="What stays open"
            hint="One line each. It is stated in the release."
            lines={3}
            most={2000}
            value={open}
            onValue={setOpen}
            pointer="/staysOpen"
            required
          />
        )}
        {openWork?.verified !== true && <GoneOverTicks seen={gone} onSeen={setGone} />}
        <details>
          <summary>A minor task under a B2 licence</summary>
          <Tick
            label="I release it as a minor task that I performed myself"
            hint="Only the one who did the work may do so"
            ticked={minor}
            onTick={setMinor}
          />
        </details>
      </SignForm>
    </>
  );
}

function query(staysOpen: string): string {
  return new URLSearchParams({ act: 'release', ...(staysOpen === '' ? {} : { staysOpen }) }).toString();
}
