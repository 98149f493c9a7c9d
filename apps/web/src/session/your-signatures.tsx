import type { Schemas } from '../api/client.js';
import { useRead } from '../api/use-read.js';
import { Read } from '../shell/reading.js';
import { withOffset } from '../words/time.js';
import { methodWords, roleWords } from '../words/words.js';
import { useSession } from './session.js';

type Signature = Schemas['SignatureView'];

/** The signer's confirmation: everything that stands signed in one's own name, so that a strange one is noticed. */
export function YourSignatures() {
  const signatures = useRead<Schemas['Signatures']>('/signatures');
  return (
    <section>
      <h2>Signed in your name</h2>
      <p>The newest first. Is one of them not yours, tell quality at once.</p>
      <p class="soft">
        These signatures are designed to the published guidance on electronic records; nobody has approved them.
      </p>
      <Read of={signatures}>
        {({ signatures: given }) =>
          given.length === 0 ? (
            <p>Nothing yet.</p>
          ) : (
            <ol class="history">
              {given.map((one) => (
                <One key={one.id} signature={one} />
              ))}
            </ol>
          )
        }
      </Read>
    </section>
  );
}

function One({ signature }: { signature: Signature }) {
  const { operator } = useSession();
  const { statement, signedAt, method, licence, role, authorisation, sealedAs, verifies, misfits } = signature;
  return (
    <li>
      <blockquote>{statement}</blockquote>
      <p>
        {withOffset(signedAt, operator.base)}, {roleWords(role)}
        {licence && `, licence ${licence}`}
        {authorisation && `, authorisation ${authorisation}`}, {methodWords(method)}
      </p>
      <p class={verifies ? 'soft' : 'strong'}>
        {sealedAs === null ? 'Not sealed yet in the record' : `Sealed in the record as number ${sealedAs}`}
        {verifies ? '; it verifies.' : `. It does NOT verify: ${misfits.join('; ')}.`}
      </p>
    </li>
  );
}
