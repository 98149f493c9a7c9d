import type { Schemas } from '../api/client.js';
import { useRead } from '../api/use-read.js';
import { useSession } from '../session/session.js';
import { Page } from '../shell/page.js';
import { Read } from '../shell/reading.js';
import { withOffset } from '../words/time.js';
import { counted } from '../words/words.js';
import { AgeLine } from './age-line.js';
import { BackupLine } from './backup-line.js';
import { Heads } from './heads.js';
import { HandOut } from './hand-out.js';
import { Proofs } from './proofs.js';
import { Verification } from './verification.js';

const MAY_VERIFY = ['quality', 'administrator'];
const MAY_EXPORT = ['quality', 'engineer', 'maintenance-control', 'administrator'];

/** What an inspector is shown: that nothing in the record was altered, what proves it, and what can be handed out. */
export function RecordPage() {
  const { operator, roles } = useSession();
  const state = useRead<Schemas['RecordState']>('/record/state');
  const has = (some: readonly string[]): boolean => roles.some((role) => some.includes(role));
  return (
    <Page title="The record" aside={state.value && `as of ${withOffset(state.value.at, operator.base)}`}>
      <Read of={state}>
        {(value) => (
          <>
            <State state={value} />
            {has(MAY_VERIFY) && <Verification state={value} />}
          </>
        )}
      </Read>
      {has(MAY_EXPORT) && <HandOut />}
      {has(MAY_EXPORT) && <Proofs />}
      <Heads />
      {has(MAY_VERIFY) && (
        <>
          <h2>Periods of keeping</h2>
          <p>
            <a class="button" href="/record/keeping">
              What is past its period of keeping
            </a>
          </p>
        </>
      )}
    </Page>
  );
}

function State({ state }: { state: Schemas['RecordState'] }) {
  const { backup, signedHead, size, root, signsHeads } = state;
  return (
    <>
      <p>
        {counted(size, 'entry', 'entries', 'No entry')}, each written once and never altered. Everything that was
        signed or entered for this operator stands in it.
      </p>
      <ul class="plain-list">
        <li>
          <BackupLine backup={backup} />
        </li>
        <li>
          <AgeLine
            what="Last signed head"
            age={signedHead}
            ifNone={
              signsHeads
                ? 'This server signs heads; the first one follows.'
                : 'This server signs none: start it with a folder for heads (HEADS_FOLDER).'
            }
          >
            {signedHead.size !== null && ` Over ${counted(signedHead.size, 'entry', 'entries', 'no entry')}.`}
          </AgeLine>
        </li>
      </ul>
      {root && (
        <details>
          <summary>The newest head</summary>
          <p class="breakable">
            Root hash of {size} entries: {root}
          </p>
          <p class="soft">Two people who read the same root hold the same record, word for word.</p>
        </details>
      )}
    </>
  );
}
