import type { Schemas } from '../api/client.js';
import { useRead } from '../api/use-read.js';
import { useSession } from '../session/session.js';
import { Read } from '../shell/reading.js';
import { withOffset } from '../words/time.js';
import { counted } from '../words/words.js';

const FIRST_SHOWN = 5;

/** The heads that were signed, and the keys to check them with. */
export function Heads() {
  const heads = useRead<Schemas['RecordHeads']>('/record/heads');
  return (
    <section aria-label="Signed heads">
      <h2>Signed heads</h2>
      <Read of={heads}>
        {({ heads: signed, keys }) =>
          signed.length === 0 ? (
            <p>None was signed yet. A signed head that is kept outside shows later whether anything was altered.</p>
          ) : (
            <>
              <List heads={signed.slice(0, FIRST_SHOWN)} />
              {signed.length > FIRST_SHOWN && (
                <details>
                  <summary>{signed.length - FIRST_SHOWN} older</summary>
                  <List heads={signed.slice(FIRST_SHOWN)} />
                </details>
              )}
              {keys.map(({ fingerprint, pem }) => (
                <details key={fingerprint}>
                  <summary>Public key {fingerprint}</summary>
                  <pre class="breakable">{pem}</pre>
                  <p class="soft">Whoever checks gets the key on another way than from this page.</p>
                </details>
              ))}
            </>
          )
        }
      </Read>
    </section>
  );
}

function List({ heads }: { heads: Schemas['RecordHeads']['heads'] }) {
  const { operator } = useSession();
  return (
    <ul class="plain-list">
      {heads.map(({ size, root, signedAt, key }) => (
        <li key={size}>
          {counted(size, 'entry', 'entries', '')}
          {signedAt && `, signed ${withOffset(signedAt, operator.base)}`}, key {key}
          <span class="soft block breakable">{root}</span>
        </li>
      ))}
    </ul>
  );
}
