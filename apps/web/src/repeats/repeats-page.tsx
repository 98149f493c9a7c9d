import type { Schemas } from '../api/client.js';
import { useLive } from '../api/use-live.js';
import { useRead } from '../api/use-read.js';
import { shortName } from '../item/work-address.js';
import { useSession } from '../session/session.js';
import { Cell } from '../shell/cell.js';
import { Page } from '../shell/page.js';
import { Read } from '../shell/reading.js';
import { withOffset } from '../words/time.js';
import { nextOfEach, type Owed } from './next-of-each.js';
import { MoreTimes, RepeatState, RepeatWords } from './repeat-list.js';

type Line = Schemas['FleetRepeat'];

const ORDER: Line['state'][] = ['missed', 'not-known', 'due', 'coming', 'done'];

/** Repeated work of the whole fleet: what was missed, what is due and before which flight, what is left of the rest. */
export function RepeatsPage() {
  const { base } = useSession().operator;
  const list = useRead<Schemas['FleetRepeats']>('/repeats');
  useLive(list);
  return (
    <Page
      title="Work owed again and again"
      aside={list.value && `as of ${withOffset(list.value.at, base)}`}
      back={{ href: '/defects', text: 'Open items' }}
    >
      <Read of={list}>
        {({ repeats }) =>
          repeats.length === 0 ? <p>No open item owes work again.</p> : <Table owed={nextOfEach(inOrder(repeats))} />
        }
      </Read>
    </Page>
  );
}

function inOrder(lines: readonly Line[]): Line[] {
  const time = ({ flight }: Line) => flight?.offBlockAt ?? '9999';
  return lines.toSorted(
    (one, other) => ORDER.indexOf(one.state) - ORDER.indexOf(other.state) || time(one).localeCompare(time(other)),
  );
}

function Table({ owed }: { owed: readonly Owed<Line>[] }) {
  return (
    <table class="stack">
      <thead>
        <tr>
          <th scope="col">Item</th>
          <th scope="col">What</th>
          <th scope="col">Stands</th>
          <th scope="col">When and why</th>
        </tr>
      </thead>
      <tbody>
        {owed.map(({ line, more }, index) => (
          <tr key={`${line.defect} ${line.work} ${index}`}>
            <th scope="row">
              <a class="registration" href={`/defects/${line.defect}`}>
                {line.number}
              </a>
            </th>
            <Cell head="What">
              {shortName(line.work)}: {line.text.split(/(?<=\.)\s/)[0]}
            </Cell>
            <Cell head="Stands">
              <RepeatState repeat={line} />
            </Cell>
            <Cell head="When and why">
              <RepeatWords repeat={line} />
              <MoreTimes more={more} />
            </Cell>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
