import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { SignForm } from '../acts/sign-form.js';
import { useSession } from '../session/session.js';
import { Field } from '../shell/fields.js';
import { withOffset } from '../words/time.js';
import { EngineForm } from './engine-form.js';
import { hoursText } from './hours.js';

type Count = Schemas['EnginesView']['counts'][number];
type Line = Schemas['EngineCountLine'];

interface EngineCountsProps {
  aircraft: string;
  counts: Count[];
  mayState: boolean;
  done(written: Schemas['EngineCounted']): void;
}

/** Everything that was stated, the newest first; what was corrected or withdrawn stays readable. */
export function EngineCounts({ aircraft, counts, mayState, done }: EngineCountsProps) {
  const [open, setOpen] = useState<string | null>(null);
  const after = (written: Schemas['EngineCounted']) => {
    setOpen(null);
    done(written);
  };
  return (
    <>
      <h2>What was stated</h2>
      {counts.length === 0 && <p>Nothing yet.</p>}
      <ul class="plain-list cards">
        {counts.map((count) => (
          <li key={count.id} class="card">
            <Stated line={count} />
            {count.history.length > 0 && (
              <details>
                <summary>Before that</summary>
                {count.history.map((line) => (
                  <Stated key={line.version} line={line} />
                ))}
              </details>
            )}
            {mayState && count.kind !== 'withdrawn' && open !== count.id && (
              <div class="buttons">
                <button type="button" class="quiet" onClick={() => setOpen(count.id)}>
                  Correct or withdraw
                </button>
              </div>
            )}
            {open === count.id && (
              <>
                <EngineForm aircraft={aircraft} of={count} done={after} readAgain={() => setOpen(null)} />
                <Withdraw aircraft={aircraft} count={count} done={after} />
              </>
            )}
          </li>
        ))}
      </ul>
    </>
  );
}

const KINDS: Record<Line['kind'], string> = {
  reading: 'read',
  run: 'ran, told by no leg:',
  withdrawn: 'withdrawn, it was never so:',
};

function Stated({ line }: { line: Line }) {
  const { operator } = useSession();
  const { kind, position, serial, at, minutes, cycles, reason, by, writtenAt } = line;
  return (
    <p>
      <span class="strong">
        Engine {position}
        {serial !== null && ` (${serial})`}
      </span>{' '}
      {KINDS[kind]} {hoursText(minutes)}, {cycles} cycles, {withOffset(at, operator.base)}
      <span class="soft block">
        {reason}. Signed by {by}, {withOffset(writtenAt, operator.base)}
      </span>
    </p>
  );
}

function Withdraw({ aircraft, count, done }: { aircraft: string; count: Count; done: EngineCountsProps['done'] }) {
  const [reason, setReason] = useState('');
  return (
    <section class="card">
      <h2>Or it was never so</h2>
      <SignForm<Schemas['EngineCounted']>
        statementPath={`/aircraft/${aircraft}/engines/statement?act=withdrawn`}
        path={`/aircraft/${aircraft}/engines/${count.id}/withdrawn`}
        seen={`"${count.version}"`}
        body={() => ({ reason })}
        button="Sign: withdraw it"
        done={done}
      >
        <Field label="Why" most={1000} value={reason} onValue={setReason} pointer="/reason" required />
      </SignForm>
    </section>
  );
}
