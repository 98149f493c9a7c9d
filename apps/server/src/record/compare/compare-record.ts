/**
 * Whether the tables say what the record says.
 *
 * Everything that can be told from the record is built anew from it: acts in their order, the list columns of each
 * defect, the lines of each register, signatures, legs and messages; and every row that the record tells as it stood after
 * each change. One aircraft, or one page of the record, is in memory at a time; of rows told only which entry told them.
 * What no record tells, and why, is in `left-out.ts`.
 */
import { Refusal, type ZoneDifference } from '#deferrals';
import type { AircraftRow, MelSummary, Recorded, SignatureRow, Store, Tx } from '#store';
import { asDifference } from '../../defects/defect-book.js';
import { recordedPeople } from '../../defects/people-in-acts.js';
import { signatureIn } from '../../people/kept-signature.js';
import { compareMovements } from './compare-movements.js';
import { compareRows } from './compare-rows.js';
import type { Compared } from './compared.js';
import { differencesOfRow } from './difference.js';
import { type Rebuilt, rebuildAircraft } from './rebuild-aircraft.js';

const PAGE = 500;

/** Each aircraft is locked while it is read: an act that is being written is then either seen whole or not at all. */
export async function compareRecord(store: Store, operator: { id: string; code: string }): Promise<Compared> {
  const compared: Compared = { operator: operator.code, entries: 0, rows: 0, differences: [] };
  const fleet = await store.withOperator(operator.id, null, (tx) => tx.aircraft.list());
  for (const { id } of fleet) {
    await store.withOperator(operator.id, null, async (tx) => {
      const aircraft = await tx.aircraft.lock(id);
      if (aircraft) await compareAircraft(tx, aircraft, compared);
    });
  }
  for (let number: number | null = 0; number !== null;) {
    const after: number = number;
    number = await store.withOperator(operator.id, null, (tx) => compareSignatures(tx, after, compared));
  }
  await store.withOperator(
    operator.id,
    null,
    async (tx) => {
      await compareRows(tx, compared);
      await compareMovements(tx, compared);
    },
    'REPEATABLE READ',
  );
  return compared;
}

async function compareAircraft(tx: Tx, aircraft: AircraftRow, compared: Compared): Promise<void> {
  const entries = await tx.record.wholeOfAircraft(aircraft.id);
  const rows = await tx.defects.ofAircraft(aircraft.id);
  const zoneData = await tx.zoneData.all();
  const differences = rows.map(
    ({ id }) => [id, zoneData.filter((one) => one.defectId === id).map(asDifference)] as const,
  );
  const rebuilt = await rebuiltOr(tx, aircraft, entries, new Map(differences), await tx.mel.list());
  if (rebuilt instanceof Refusal) {
    const why = { column: null, record: rebuilt.message, stored: null };
    compared.differences.push({ table: 'defect', id: aircraft.registration, ...why });
    return;
  }
  const hold = (table: string, told: ReadonlyMap<string, object>, stored: readonly { id: string }[]): void => {
    const byId = new Map(stored.map((row) => [row.id, row]));
    for (const id of new Set([...told.keys(), ...byId.keys()])) {
      compared.rows += 1;
      compared.differences.push(...differencesOfRow(table, id, told.get(id) ?? null, byId.get(id) ?? null));
    }
  };
  hold('defect', rebuilt.defects, rows);
  hold('defect_act', rebuilt.defectActs, await tx.acts.ofAll(rows.map(({ id }) => id)));
  hold('register_act', rebuilt.registerActs, await tx.register.acts(aircraft.id));
  hold('left_item', rebuilt.leftItems, await tx.register.ofAircraft(aircraft.id, { removed: true }));
}

async function rebuiltOr(
  tx: Tx,
  aircraft: AircraftRow,
  entries: readonly Recorded[],
  zoneData: ReadonlyMap<string, ZoneDifference[]>,
  revisions: readonly MelSummary[],
): Promise<Rebuilt | Refusal> {
  const people = await tx.people.behind(referencesIn(entries));
  const ids = new Map([...people].map(([reference, { id }]) => [reference, id]));
  return rebuildAircraft(aircraft, entries, ids, { zoneData, revisions }).catch((error: unknown) => {
    if (error instanceof Refusal) return error;
    throw error;
  });
}

/** References are 64 hex digits wherever they stand. */
function referencesIn(entries: readonly Recorded[]): string[] {
  return [...new Set(JSON.stringify(entries.map(({ entry }) => entry)).match(/\b[0-9a-f]{64}\b/g) ?? [])];
}

/** @returns the number of the last entry that was read; null at the end */
async function compareSignatures(tx: Tx, after: number, compared: Compared): Promise<number | null> {
  const page = await tx.record.sealedAfter(after, PAGE);
  compared.entries += page.length;
  const kept = await tx.signatures.ofEntries(page.map(({ entry }) => entry.id));
  const ofEntry = new Map(kept.map((signature) => [signature.entryId, signature]));
  const people = await tx.people.known(kept.map(({ personId }) => personId));
  for (const recorded of page) {
    const told = signatureTold(recorded);
    const signature = ofEntry.get(recorded.entry.id) ?? null;
    if (told === null && signature === null) continue;
    compared.rows += 1;
    const id = signature?.id ?? `of entry ${recorded.number}`;
    const stored = signature && {
      ...signature,
      authorisation: recordedPeople(signature.authorisation, people),
      personId: people.get(signature.personId)?.reference ?? signature.personId,
    };
    compared.differences.push(...differencesOfRow('signature', id, told, stored));
  }
  return page.length < PAGE ? null : (page.at(-1)?.number ?? null);
}

/** What an entry says of the signature that was given with it; null when it was not signed. */
function signatureTold({ entry, leaf }: Recorded): Partial<SignatureRow> | null {
  const { given, signer } = signatureIn(entry.payload as Parameters<typeof signatureIn>[0], entry.who);
  if (given.statement === undefined) return null;
  const { statement, method, evidence, signedAt, authorisation } = given;
  return {
    contentSha256: leaf,
    ...(signer === null ? {} : { personId: signer }),
    ...Object.fromEntries(
      Object.entries({ statement, method, evidence, signedAt, authorisation }).filter(
        ([, value]) => value !== undefined,
      ),
    ),
  };
}
