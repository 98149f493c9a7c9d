/** What is stored of the people at stations, as the reasoner takes it for one type of aircraft. */
import { sayStation, type StationFacts, type StationNames } from '#dispatch';
import type { Authorised, StationCoverRow, Tx } from '#store';
import { grouped } from '../defects/grouped.js';

/**
 * Somebody counts while an authorisation to sign procedures on the type is valid. Who is there without one is not said to
 * be absent: about this type nothing is known then.
 */
export async function stationFacts(tx: Tx, aircraftType: string): Promise<StationFacts[]> {
  const [covers, authorised, people, names] = await Promise.all([
    tx.stationCovers.inForce(),
    tx.people.authorisationsAtStations(),
    tx.people.atStations(),
    stationNames(tx),
  ]);
  const given = grouped(
    authorised.filter((one) => maySign(one, aircraftType)),
    ({ personId }) => personId,
  );
  const facts: StationFacts[] = [];
  for (const cover of covers) {
    const { station, personId, source, fromAt, untilAt } = cover;
    if (personId === null) {
      facts.push({ station, maintenance: false, ...windowOf([fromAt], [untilAt]), source });
      continue;
    }
    const said = `${people.get(personId)?.name ?? 'somebody'} at ${sayStation({ names }, station)}, ${source}${withEquipment(cover)}`;
    facts.push(
      ...(given.get(personId) ?? []).map(({ validFrom, validUntil, revokedAt }) => ({
        station,
        maintenance: true,
        ...windowOf([fromAt, validFrom], [untilAt, validUntil, revokedAt]),
        source: said,
      })),
    );
  }
  return facts.filter(({ from, until }) => from === undefined || until === undefined || from < until);
}

export async function stationNames(tx: Tx): Promise<StationNames> {
  return new Map((await tx.operators.stations()).map(({ code, name }) => [code, name]));
}

function maySign({ aircraftTypes, privileges }: Authorised, type: string): boolean {
  return aircraftTypes.includes(type) && privileges.includes('sign-procedure');
}

/** From the latest beginning to the earliest end; all instants are in UTC with milliseconds, so text orders them. */
function windowOf(
  begins: readonly (string | null)[],
  ends: readonly (string | null)[],
): Pick<StationFacts, 'from' | 'until'> {
  const from = begins
    .flatMap((one) => one ?? [])
    .toSorted()
    .at(-1);
  const until = ends.flatMap((one) => one ?? []).toSorted()[0];
  return { ...(from === undefined ? {} : { from }), ...(until === undefined ? {} : { until }) };
}

function withEquipment({ equipment }: StationCoverRow): string {
  return equipment.length === 0 ? '' : `, with ${equipment.join(', ')}`;
}
