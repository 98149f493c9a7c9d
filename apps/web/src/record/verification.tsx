import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useRead } from '../api/use-read.js';
import { useSession } from '../session/session.js';
import { Read } from '../shell/reading.js';
import { withOffset } from '../words/time.js';
import { counted } from '../words/words.js';

/** Reads the record through on demand. A long one is for the command on the server. */
export function Verification({ state }: { state: Schemas['RecordState'] }) {
  const [round, setRound] = useState(0);
  const long = state.size > state.mostVerified;
  return (
    <section aria-label="Verify the record">
      <h2>Was anything altered?</h2>
      {long ? (
        <p>The record is too long for a page: have it verified on the server, proviso record verify.</p>
      ) : (
        <div class="buttons">
          <button type="button" class="main" onClick={() => setRound(round + 1)}>
            Verify the whole record now
          </button>
        </div>
      )}
      {round > 0 && <Finding key={round} />}
    </section>
  );
}

function Finding() {
  const { operator } = useSession();
  const finding = useRead<Schemas['RecordVerified']>('/record/verification');
  return (
    <Read of={finding}>
      {({ at, entries, waiting, misfit }) => (
        <div role="status" class={misfit ? 'problem' : 'done-box'}>
          <p class="strong">
            {misfit
              ? 'The record does not fit.'
              : `All ${counted(entries, 'entry', 'entries', '')} fit, from the first to the newest.`}
          </p>
          {misfit && (
            <>
              <p>
                {misfit.number !== null && `Entry ${misfit.number}: `}
                {misfit.sentence}
              </p>
              <p>
                <strong>What to do:</strong> change nothing on the server, keep the backups, and tell quality and the
                administrator.
              </p>
            </>
          )}
          <p>
            {withOffset(at, operator.base)}.
            {waiting > 0 && ` ${counted(waiting, 'entry waits', 'entries wait', '')} to be sealed.`}
          </p>
        </div>
      )}
    </Read>
  );
}
