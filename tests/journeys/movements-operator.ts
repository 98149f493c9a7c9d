/** An operator of the tests' own, with people, aircraft of the published type T1 and planned flights. All of it invented. */
import { readFileSync } from 'node:fs';
import { createOperator, newId, type Store } from '#store';
import { hashSecret } from '../../apps/server/src/index.js';
import type { ApiClient, Shapes } from '../support/api-client.js';
import type { FreshDatabase } from '../support/postgres.js';

export const SECRET = 'wet-boots-on-the-apron';

/** Sign-in names by role. */
export const PEOPLE = {
  technician: 'tarn',
  commander: 'colm',
  dispatcher: 'dree',
  'maintenance-control': 'mave',
  engineer: 'engel',
  'mel-engineer': 'melke',
} as const;

type Role = keyof typeof PEOPLE;

const PRIVILEGES: Partial<Record<Role, string[]>> = {
  technician: ['write-up', 'defer', 'sign-procedure', 'inspect', 'release'],
  commander: ['write-up', 'sign-procedure'],
};

export interface Planned {
  number: string;
  from: string;
  to: string;
  offBlockAt: string;
  onBlockAt: string;
  etopsMinutes?: number;
  state?: 'planned' | 'flown';
}

export interface MovementsOperator {
  id: string;
  aircraft: Record<string, string>;
}

/** @param marks registrations of its aircraft */
export async function movementsOperator(
  { database, store }: { database: FreshDatabase; store: Store },
  { code, marks, settings = {} }: { code: string; marks: readonly string[]; settings?: Record<string, unknown> },
): Promise<MovementsOperator> {
  const operator = { code, name: `Operator ${code}`, invented: true, base: 'UTC', settings };
  const id = await createOperator(database.ownerUrl, operator);
  const hash = await hashSecret(SECRET);
  return store.withOperator(id, null, async (tx) => {
    const organisationId = await tx.people.addOrganisation({
      name: `Works of ${code}`,
      approvalNumber: `QX.${code}`,
    });
    const since = '2025-01-01T00:00:00.000Z';
    for (const [role, name] of Object.entries(PEOPLE) as [Role, string][]) {
      const signIn = nameAt(code, role);
      const { id: personId } = await tx.people.add({ name: signIn, licenceNumber: `QX.66.${name}` });
      await tx.people.join({ personId, organisationId, roles: [role], validFrom: since });
      await tx.people.giveCredential(personId, signIn, hash);
      const privileges = PRIVILEGES[role];
      if (!privileges) continue;
      const types = { aircraftTypes: ['T1'], licenceCategories: ['B1'] };
      await tx.people.authorise({
        personId,
        organisationId,
        number: `${code}-${name}`,
        ...types,
        privileges,
        validFrom: since,
      });
    }
    for (const [station, name] of Object.entries({ QXA: 'Astmoor', QXB: 'Bellwick', QXC: 'Cardle' }))
      await tx.operators.addStation({ code: station, name, zone: 'UTC' });
    const aircraft: Record<string, string> = {};
    for (const registration of marks)
      aircraft[registration] = await tx.aircraft.add({ registration, type: 'T1', serial: 7, configuration: [] });
    return { id, aircraft };
  });
}

/** Sign-in names are one for all operators. */
export function nameAt(code: string, role: Role): string {
  return `${PEOPLE[role]}-${code.toLowerCase()}`;
}

/** @returns ids by flight number */
export async function plan(
  store: Store,
  operator: MovementsOperator,
  mark: string,
  flights: readonly Planned[],
): Promise<Record<string, string>> {
  const ids: Record<string, string> = {};
  await store.withOperator(operator.id, null, async (tx) => {
    for (const { number, from, to, offBlockAt, onBlockAt, etopsMinutes = 0, state = 'planned' } of flights) {
      const id = newId();
      const aircraftId = operator.aircraft[mark] as string;
      const facts = { 'flight.etopsMinutes': etopsMinutes };
      await tx.flights.add({
        id,
        aircraftId,
        number,
        fromStation: from,
        toStation: to,
        offBlockAt,
        onBlockAt,
        state,
        facts,
      });
      ids[number] = id;
    }
  });
  return ids;
}

/** The published rows of T1, loaded as this operator's MEL by its MEL engineer. */
export async function loadPublishedRows(melEngineer: ApiClient): Promise<void> {
  const text = readFileSync(new URL('../cases/published-rows-t1.yaml', import.meta.url), 'utf8');
  await melEngineer.post('/api/mel', { file: 'published-rows-t1.yaml', text });
}

/** Writes up and defers the auxiliary power unit on row 2 (category A, four flights), its operating procedure signed. */
export async function deferApu(
  { technician, commander }: { technician: ApiClient; commander: ApiClient },
  aircraft: string,
  recordedAt: string,
): Promise<string> {
  const { body } = await technician.post<Shapes['ActDone']>('/api/defects', {
    aircraft,
    origin: 'technician',
    description: 'Auxiliary power unit does not start.',
    recordedAt,
    item: { entry: '49-10-01', units: ['1'] },
  });
  const { id } = body.defect;
  await technician.sign(id, 'deferral', { act: 'defer', entry: '49-10-01', row: '2' }, { row: '2' });
  const work = '49-10-01/2/O1';
  await commander.sign(id, 'procedures', { act: 'procedure', work }, { work, doneAt: recordedAt, leaves: [] });
  return id;
}

/** How many rows there are in every table that movements write to, that of kept answers last. */
export async function rowsStored(store: Store, operator: MovementsOperator): Promise<number[]> {
  const tables = ['movement_delivery', 'movement_message', 'movement_tray', 'leg', 'record_entry', 'idempotency'];
  return store.withOperator(operator.id, null, async (tx) => {
    const counts: number[] = [];
    for (const table of tables) {
      const [row] = await tx.query<{ count: string }>(`select count(*) from ${table} where operator_id = $1`, [
        operator.id,
      ]);
      counts.push(Number(row?.count));
    }
    return counts;
  });
}
