import { SignForm } from '../acts/sign-form.js';
import type { Schemas } from '../api/client.js';
import { useLive } from '../api/use-live.js';
import { useRead } from '../api/use-read.js';
import { useSession } from '../session/session.js';
import { Cell } from '../shell/cell.js';
import { Page } from '../shell/page.js';
import { Read } from '../shell/reading.js';
import { withOffset } from '../words/time.js';
import { counted } from '../words/words.js';

type View = Schemas['ZoneDataView'];
type Difference = Schemas['ZoneDifference'];

const MAY_CONFIRM = ['quality', 'engineer'];

/** Deadlines that newer time-zone data ends at another instant, which end counts, and the confirmation of the newer one. */
export function ZoneDataPage() {
  const { operator, roles } = useSession();
  const view = useRead<View>('/zone-data');
  useLive(view);
  const mayConfirm = roles.some((role) => MAY_CONFIRM.includes(role));
  return (
    <Page
      title="Time-zone data"
      aside={view.value && `as of ${withOffset(view.value.at, operator.base)}`}
      back={{ href: '/defects', text: 'Open items' }}
    >
      <p>
        A deadline is a day. When that day ends on the clock follows from time-zone data, which governments change.
        Where newer data ends it at another instant, the stricter end counts until a person confirms the newer one.
      </p>
      <Read of={view}>
        {(read) => <Found view={read} mayConfirm={mayConfirm} done={() => void view.readAgain()} />}
      </Read>
    </Page>
  );
}

interface FoundProps {
  view: View;
  mayConfirm: boolean;
  done(): void;
}

function Found({ view, mayConfirm, done }: FoundProps) {
  const { tzdb, newest, older, differences } = view;
  const open = differences.filter(({ confirmedAt }) => confirmedAt === null);
  return (
    <>
      <p>
        This server has time-zone data {tzdb}.{' '}
        {older ? (
          <strong>
            Deadlines are stored with {newest}, which is newer: this server computes no deadline until it is brought
            up to date.
          </strong>
        ) : (
          `${counted(open.length, 'deadline waits', 'deadlines wait', 'No deadline waits')} for a confirmation.`
        )}
      </p>
      {differences.length > 0 && <Table differences={differences} />}
      {open.length > 0 && mayConfirm && (
        <SignForm<View>
          key={open.length}
          statementPath="/zone-data/statement"
          path="/zone-data/confirmation"
          body={() => ({})}
          button="Confirm the newer ends"
          done={done}
        />
      )}
      {open.length > 0 && !mayConfirm && <p>Quality, or the engineer who owns the open items, confirms them.</p>}
    </>
  );
}

function Table({ differences }: { differences: readonly Difference[] }) {
  return (
    <table class="stack">
      <thead>
        <tr>
          <th scope="col">Item</th>
          <th scope="col">As signed</th>
          <th scope="col">By newer data</th>
          <th scope="col">Counts now</th>
          <th scope="col">Confirmed</th>
        </tr>
      </thead>
      <tbody>
        {differences.map((one) => (
          <tr key={`${one.defect} ${one.tzdbBefore} ${one.tzdbAfter} ${one.endsBefore}`}>
            <th scope="row">
              <a class="registration" href={`/defects/${one.defect}`}>
                {one.number}
              </a>
            </th>
            <Cell head="As signed">
              before {withOffset(one.endsBefore, one.zone)}
              <span class="soft block">data {one.tzdbBefore}</span>
            </Cell>
            <Cell head="By newer data">
              before {withOffset(one.endsAfter, one.zone)}
              <span class="soft block">data {one.tzdbAfter}</span>
            </Cell>
            <Cell head="Counts now">
              <strong>before {withOffset(one.inForce, one.zone)}</strong>
              {one.confirmedAt === null && <span class="soft block">the stricter of both</span>}
            </Cell>
            <Cell head="Confirmed">
              {one.confirmedAt === null ? 'not yet' : withOffset(one.confirmedAt, one.zone)}
            </Cell>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
