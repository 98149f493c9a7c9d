import type { Schemas } from '../api/client.js';
import { useSession } from '../session/session.js';
import { SignedBy } from './signed-by.js';
import { shortName, worksOf } from './work-address.js';
import { withOffset } from '../words/time.js';

/** Every procedure of the row with who signed it last; one that comes again can be signed again. */
export function WorkSigned({ defect }: { defect: Schemas['DefectLine'] }) {
  const { operator } = useSession();
  const signed = worksOf(defect).filter((work) => work.signed !== null);
  if (signed.length === 0) return null;
  return (
    <section>
      <h2>Work signed</h2>
      <ul class="plain-list">
        {signed.map(({ work, kind, text, repeat, signed: by }) => {
          const procedure = shortName(work);
          return (
            <li key={work}>
              <span class="strong">
                ({kind}) {procedure}
              </span>{' '}
              {text.split(/(?<=\.)\s/)[0]}
              <span class="soft block">
                Done {by && withOffset(by.doneAt, operator.base)}, {repeat}. {by && <SignedBy by={by} />}
              </span>
              {repeat !== 'once' && (
                <a class="button" href={`/defects/${defect.id}/work/${work}`}>
                  Sign {procedure} again
                </a>
              )}
            </li>
          );
        })}
      </ul>
    </section>
  );
}
