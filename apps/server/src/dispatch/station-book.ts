/** What is stored of the people at stations, as the reasoner takes it for one type of aircraft. */
import type { StationFacts } from '#dispatch';
import type { Authorised, StationCoverRow, Tx } from '#store';

/**
 * Somebody counts while an authorisation to sign procedures on the type is valid. Who is there without one is not said to
 * be absent: about this type nothing is known then.
 */
export async function stationFacts(tx: Tx, aircraftType: string): Promise<StationFacts[]> {
  const covers = await tx.stationCovers.inForce();
  const present = [...new Set(covers.flatMap(({ personId }) => personId ?? []))];
  const [people] = await Promise.all([
    tx.people.known(present),
    ...present.map((personId) => tx.people.authorisationsOf(personId)),
  ]);
  const facts: StationFacts[] = [];
  for (const cover of covers) {
    const { station, personId, source, fromAt, untilAt } = cover;
    if (personId === null) {
      facts.push({ station, maintenance: false, ...windowOf([fromAt], [untilAt]), source });
      continue;
    }
    const said = `${people.get(personId)?.name ?? 'somebody'} at ${station}, ${source}${withEquipment(cover)}`;
    const given = (await tx.people.authorisationsOf(personId)).filter((one) => maySign(one, aircraftType));
    facts.push(
      ...given.map(({ validFrom, validUntil, revokedAt }) => ({
        station,
        maintenance: true,
        ...windowOf([fromAt, validFrom], [untilAt, validUntil, revokedAt]),
        source: said,
      })),
    );
  }
  return facts.filter(({ from, until }) => from === undefined || until === undefined || from < until);
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
