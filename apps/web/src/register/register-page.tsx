import { useRoute } from 'preact-iso';
import type { Schemas } from '../api/client.js';
import { useRead } from '../api/use-read.js';
import { useSession } from '../session/session.js';
import { Page } from '../shell/page.js';
import { Read } from '../shell/reading.js';
import { withOffset } from '../words/time.js';
import { counted } from '../words/words.js';
import { HandOvers } from './hand-overs.js';
import { RegisterList } from './register-list.js';
import { Corrections } from './corrections.js';

type View = Schemas['RegisterView'];

/** Everything left on one aircraft, whoever owns it: what has no owner first, then what waits for somebody. */
export function RegisterPage() {
  const { id = '' } = useRoute().params;
  const register = useRead<View>(`/aircraft/${id}/left`);
  const name = register.value?.registration ?? 'Aircraft';
  return (
    <Page title="Left on the aircraft" aside={name} back={{ href: `/aircraft/${id}`, text: name }}>
      <Read of={register}>{(view) => <Content view={view} />}</Read>
    </Page>
  );
}

const ACTS_ON_A_THING: [address: string, text: string][] = [
  ['removed', 'Undo something'],
  ['moves', 'Change the owner'],
];

const SIGNED_ACTS: [address: string, text: string][] = [
  ['fitted', 'Fitted under a document'],
  ['ended-documents', 'A document ended'],
  ['corrections', 'Something is mistyped'],
  ['hand-overs', 'Hand over the shift'],
];

function Content({ view }: { view: View }) {
  const { operator, roles } = useSession();
  const at = `/aircraft/${view.aircraft}/left`;
  const works = roles.some((role) => ['technician', 'engineer', 'maintenance-control'].includes(role));
  const unseen = view.undone.filter(({ verifiedAt, ownerKind }) => verifiedAt === null && ownerKind !== 'defect');
  return (
    <>
      <Orphans view={view} />
      <div class="two">
        <div>
          <h2>On the aircraft: {counted(view.left.length, 'thing', 'things', 'nothing')}</h2>
          <RegisterList lines={view.left} />
          <Corrections view={view} />
          <div class="buttons">
            <a class="button" href={`${at}/found`}>
              I found something
            </a>
            {works &&
              [...(view.left.length > 0 ? ACTS_ON_A_THING : []), ...SIGNED_ACTS].map(([address, text]) => (
                <a key={address} class="button" href={`${at}/${address}`}>
                  {text}
                </a>
              ))}
            {works && unseen.length > 0 && (
              <a class="button" href={`${at}/seen`}>
                See that it is undone
              </a>
            )}
          </div>
        </div>
        <div>
          <HandOvers view={view} />
          <h2>Undone last</h2>
          {view.undone.length === 0 ? <p>Nothing.</p> : <RegisterList lines={view.undone} />}
          <p class="soft">As of {withOffset(view.at, operator.base)}</p>
        </div>
      </div>
    </>
  );
}

function Orphans({ view: { orphans, openWork } }: { view: View }) {
  const tools = openWork.filter((line) => line.startsWith('not returned'));
  if (orphans.length + tools.length === 0) return null;
  return (
    <section class="caution">
      <p class="strong">The aircraft may not fly with these:</p>
      <ul>
        {orphans.map((thing) => (
          <li key={thing}>{thing}: nobody owns it. Undo it, or name its owner.</li>
        ))}
        {tools.map((tool) => (
          <li key={tool}>{tool}. Find it and undo it.</li>
        ))}
      </ul>
    </section>
  );
}
