import type { Schemas } from '../api/client.js';
import { useSession } from '../session/session.js';
import { Cell } from '../shell/cell.js';
import { dayText, withOffset } from '../words/time.js';
import { counted } from '../words/words.js';
import { hoursText } from './hours.js';
import { endingWords, missingWords, timesWords } from './leg-words.js';

type Leg = Schemas['AircraftLegs']['legs'][number];

const MAY_CORRECT = ['dispatcher', 'maintenance-control', 'engineer'];

/** Each leg with its newest version in the line, and the earlier ones below it. */
export function LegTable({ aircraft, legs }: { aircraft: string; legs: Leg[] }) {
  return (
    <table class="stack">
      <thead>
        <tr>
          <th scope="col">Flight</th>
          <th scope="col">Times</th>
          <th scope="col">Airborne</th>
          <th scope="col">Block</th>
          <th scope="col">Counts</th>
          <th scope="col">Told by</th>
        </tr>
      </thead>
      <tbody>
        {legs.map((leg) => (
          <LegRow key={leg.id} aircraft={aircraft} leg={leg} />
        ))}
      </tbody>
    </table>
  );
}

function LegRow({ aircraft, leg }: { aircraft: string; leg: Leg }) {
  const { roles } = useSession();
  const { flight, from, to, ending, missing, delays, diverted, cycles, landings, history } = leg;
  return (
    <tr>
      <th scope="row">
        <span class="strong">{flight}</span> {from ?? 'not known'} to {to ?? 'not known'}
        <span class="soft block">{dayText(leg.offBlockAt, 'UTC')}</span>
      </th>
      <Cell head="Times">
        {timesWords(leg)}
        <span class="block">{endingWords(ending)}</span>
        {diverted && <span class="block strong">Diverted from {diverted.from}</span>}
        {missing.length > 0 && <span class="block strong">Not known: {missingWords(missing)}</span>}
        {delays.length > 0 && (
          <span class="block soft">
            Late: {delays.map(({ code, minutes }) => `reason ${code}, ${minutes} min`).join('; ')}
          </span>
        )}
      </Cell>
      <Cell head="Airborne">{hoursText(leg.flightMinutes)}</Cell>
      <Cell head="Block">{hoursText(leg.blockMinutes)}</Cell>
      <Cell head="Counts">
        {counted(cycles, 'cycle', 'cycles', 'no cycle')}, {counted(landings, 'landing', 'landings', 'no landing')}
      </Cell>
      <Cell head="Told by">
        {leg.source === 'messages' ? 'messages' : leg.by}
        {leg.reason && <span class="block soft">{leg.reason}</span>}
        {history.length > 0 && <Earlier versions={history} />}
        {roles.some((role) => MAY_CORRECT.includes(role)) && (
          <a class="block" href={`/aircraft/${aircraft}/flown/${leg.id}`}>
            Correct {flight}
          </a>
        )}
      </Cell>
    </tr>
  );
}

function Earlier({ versions }: { versions: Leg['history'] }) {
  const { operator } = useSession();
  return (
    <details>
      <summary>{versions.length === 1 ? 'The version before' : `${versions.length} versions before`}</summary>
      <ol>
        {versions.map((version) => (
          <li key={version.version}>
            {timesWords(version)}. {endingWords(version.ending)}, airborne {hoursText(version.flightMinutes)}.
            <span class="soft block">
              {version.by ?? 'messages'}, {withOffset(version.writtenAt, operator.base)}
              {version.reason && `: ${version.reason}`}
            </span>
          </li>
        ))}
      </ol>
    </details>
  );
}
