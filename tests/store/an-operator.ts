import { createOperator, openStore, type AircraftRow, type EntryToAppend, type Store, type Tx } from '#store';
import type { FreshDatabase } from '../support/postgres.js';
import { withClient } from '../support/with-client.js';

/** An operator with one person, one organisation and one aircraft, ready to be worked for. */
export interface AnOperator {
  id: string;
  person: string;
  reference: string;
  organisation: string;
  aircraft: string;
}

export const someInstant = '2026-03-01T08:00:00.000Z';

export async function openedStore(database: FreshDatabase, connections = 10): Promise<Store> {
  return openStore(database.appUrl, { connections });
}

export async function anOperator(database: FreshDatabase, store: Store, code: string): Promise<AnOperator> {
  const id = await createOperator(database.ownerUrl, {
    code,
    name: `Operator ${code}`,
    invented: true,
    base: 'UTC',
    settings: {},
  });
  const made = await store.withOperator(id, null, async (tx) => {
    const organisation = await tx.people.addOrganisation({
      name: `Works of ${code}`,
      approvalNumber: `Q.145.${code}`,
    });
    const { id: person, reference } = await tx.people.add({ name: `Person of ${code}`, licenceNumber: `L-${code}` });
    await tx.people.join({
      personId: person,
      organisationId: organisation,
      roles: ['technician'],
      validFrom: someInstant,
    });
    const aircraft = await tx.aircraft.add({ registration: `Q-${code}`, type: 'T1', serial: 1, configuration: [] });
    return { id, person, reference, organisation, aircraft };
  });
  await emptyRecord(database, id);
  return made;
}

/** So that a test counts from its own first entry: what was told of the rows above is taken out, behind every guard. */
async function emptyRecord({ adminUrl }: FreshDatabase, operator: string): Promise<void> {
  await withClient(adminUrl, async (client) => {
    await client.query("set session_replication_role = 'replica'");
    await client.query('delete from record_pending where operator_id = $1', [operator]);
    await client.query('delete from record_entry where operator_id = $1', [operator]);
  });
}

export function anEntry(of: AnOperator, changes: Partial<EntryToAppend> = {}): EntryToAppend {
  return {
    who: of.person,
    authorisation: null,
    organisation: null,
    what: 'test.noted',
    aircraft: null,
    times: { enteredAt: someInstant },
    payload: { note: 'pump replaced' },
    ...changes,
  };
}

/** A write-up on an aircraft that the transaction holds, with its act and its record entry. */
export async function writeUp(tx: Tx, of: AnOperator, aircraft: Pick<AircraftRow, 'id' | 'registration'>) {
  const entry = await tx.record.append(anEntry(of, { what: 'defect.written-up', aircraft }));
  const defect = await tx.defects.add({
    aircraftId: aircraft.id,
    description: 'Pump pressure low',
    raisedBy: of.person,
    recordedAt: someInstant,
    enteredAt: someInstant,
    state: 'unanswered',
  });
  await tx.acts.add({
    seq: 1,
    defectId: defect.id,
    kind: 'written-up',
    at: someInstant,
    personId: of.person,
    payload: { kind: 'written-up' },
    entryId: entry.id,
  });
  return { ...defect, entryId: entry.id };
}
