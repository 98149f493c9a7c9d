import type { Schemas } from '../api/client.js';
import { useSession } from '../session/session.js';
import { counted, minutesWords, roleWords } from '../words/words.js';
import { shortName } from './work-address.js';
import { OpenWorkSteps } from './open-work-steps.js';
import { waitsUntilAnswered } from './waits-until-answered.js';

type View = Schemas['DefectView'];

/** Who is offered acts of maintenance. Whether one may sign, the authorisation says, and the server sees to it. */
const MAINTAIN = ['technician', 'engineer'];
const MAY_CHANGE = [...MAINTAIN, 'maintenance-control'];

/** What can be done with an item as it stands, the likeliest first. */
export function NextSteps({ view }: { view: View }) {
  const { roles } = useSession();
  const { defect, openWork } = view;
  const at = `/defects/${defect.id}`;
  const change = roles.some((role) => MAY_CHANGE.includes(role)) && defect.row !== null && openWork === null && (
    <a class="button" href={`${at}/entries/${defect.entry}`}>
      Change the row
    </a>
  );
  if (!roles.some((role) => MAINTAIN.includes(role))) {
    return (
      <>
        <Owed defect={defect} />
        {change && <div class="buttons">{change}</div>}
      </>
    );
  }
  if (openWork) return <OpenWorkSteps view={view} work={openWork} />;
  if (defect.basis === null) return <Unanswered at={at} defect={defect} />;
  return (
    <>
      <Owed defect={defect} />
      <div class="buttons">
        {defect.oneOf && (
          <a class="button" href={`${at}/unit`}>
            Name the one that failed
          </a>
        )}
        <a class="button" href={`${at}/rectification`}>
          Rectify
        </a>
        {change}
        {defect.units.length === 1 && (
          <a class="button" href={`${at}/swap`}>
            Swap the part to another position
          </a>
        )}
        {view.left.some(({ kind }) => kind !== 'placard') && (
          <a class="button" href={`${at}/undone`}>
            Undo something that is left
          </a>
        )}
      </div>
    </>
  );
}

function Unanswered({ at, defect }: { at: string; defect: View['defect'] }) {
  const { entry } = defect;
  return (
    <>
      <p class="strong">{waitsUntilAnswered(defect)}</p>
      <div class="buttons">
        <a class="button main" href={entry === null ? `${at}/entries` : `${at}/entries/${entry}`}>
          Find the entry and defer
        </a>
        <a class="button main" href={`${at}/rectification`}>
          Rectify
        </a>
      </div>
      <div class="buttons">
        <a class="button" href={`${at}/document`}>
          Defer on another document
        </a>
        <a class="button" href={`${at}/no-fault-found`}>
          No fault found
        </a>
        <a class="button" href={`${at}/raised-in-error`}>
          Raised in error
        </a>
        <a class="button" href={`${at}/joining`}>
          The same as an open item
        </a>
      </div>
    </>
  );
}

/** Procedures and placard of the row that nobody has signed yet; those of the reader's role come first. */
function Owed({ defect }: { defect: Schemas['DefectLine'] }) {
  const { roles } = useSession();
  const owed = defect.work.filter(({ signed }) => signed === null);
  const sorted = [...owed].sort((one, other) => Number(roles.includes(other.by)) - Number(roles.includes(one.by)));
  const placardOwed = defect.placard !== null && !defect.placard.fitted;
  const count = owed.length + (placardOwed ? 1 : 0);
  if (count === 0) return null;
  return (
    <section>
      <h2>{counted(count, 'signature', 'signatures', '')} owed</h2>
      <ul class="plain-list cards">
        {sorted.map((work) => (
          <li key={work.work}>
            <WorkLink defect={defect} work={work} />
          </li>
        ))}
        {placardOwed && (
          <li>
            <a class="big" href={`/defects/${defect.id}/work/${defect.entry}/${defect.row}/placard`}>
              <span class="strong">Placard</span> {defect.placard?.text}
              <span class="soft block">{defect.placard?.position}</span>
            </a>
          </li>
        )}
      </ul>
    </section>
  );
}

/** Leads to where a procedure is read and signed. */
function WorkLink({ defect, work }: { defect: Schemas['DefectLine']; work: Schemas['WorkLine'] }) {
  return (
    <a class="big" href={`/defects/${defect.id}/work/${work.work}`}>
      <span class="strong">
        ({work.kind}) {shortName(work.work)}
      </span>{' '}
      {work.text.split(/(?<=\.)\s/)[0]}
      <span class="soft block">
        {roleWords(work.by)}, {minutesWords(work.minutes)}, {work.repeat}
      </span>
    </a>
  );
}
