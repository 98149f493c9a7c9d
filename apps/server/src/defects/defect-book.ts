/** Reads the lives of defects from their stored acts, and writes what was decided: acts, record, signatures, lists. */
import {
  type Act,
  type Actor,
  deadlineOf,
  type DefectLife,
  isSignature,
  replay,
  type Signature,
  signaturesOf,
  stateOf,
  underZoneData,
  type ZoneDifference,
} from '#deferrals';
import type { AircraftRow, DefectActRow, DefectRow, Tx, ZoneDifferenceRow } from '#store';
import { keepSignature, signerOfAct } from '../people/kept-signature.js';
import { keepRegister } from '../register/keep-register.js';
import { grouped } from './grouped.js';
import { type KnownPerson, peopleIn, readAct, recordedAct, storedAct } from './people-in-acts.js';

/** A defect with its row and its life. */
export interface OpenedDefect {
  row: DefectRow;
  life: DefectLife;
}

export async function livesOf(tx: Tx, rows: readonly DefectRow[]): Promise<OpenedDefect[]> {
  return livesIn(tx, rows, await tx.acts.ofAll(rows.map(({ id }) => id)));
}

/** The same from acts that were read already. */
export async function livesIn(
  tx: Tx,
  rows: readonly DefectRow[],
  stored: readonly DefectActRow[],
): Promise<OpenedDefect[]> {
  const people = await knownPeople(
    tx,
    stored.map(({ payload }) => payload),
  );
  const acts = grouped(stored, ({ defectId }) => defectId);
  const differences = grouped(await tx.zoneData.all(), ({ defectId }) => defectId);
  return rows.map((row) => {
    const own = (differences.get(row.id) ?? []).map(asDifference);
    const life = replay((acts.get(row.id) ?? []).map(({ payload }) => readAct(payload, people)));
    return { row, life: underZoneData(life, own) };
  });
}

export function asDifference({ confirmedAt, ...row }: ZoneDifferenceRow): ZoneDifference {
  return { ...row, confirmed: confirmedAt !== null };
}

/** Writes what a life adds up to, where no act was done: newer time-zone data put its end at another instant. */
export async function changeColumns(tx: Tx, row: DefectRow, life: DefectLife): Promise<void> {
  const { lastDay, endsAt, tzdb } = columnsOf(life, {});
  await tx.defects.change(row.id, row.version, {
    lastDay: lastDay ?? null,
    endsAt: endsAt ?? null,
    tzdb: tzdb ?? null,
  });
}

export async function knownPeople(tx: Tx, acts: readonly object[]): Promise<Map<string, KnownPerson>> {
  const ids = [...new Set(acts.flatMap(peopleIn))];
  return tx.people.known(ids);
}

export interface Written {
  aircraft: AircraftRow;
  /** Null for a write-up, whose row is made here. */
  row: DefectRow | null;
  acts: readonly Act[];
  life: DefectLife;
  now: string;
  melRevisionId?: string | null;
}

/**
 * Writes acts in the order decided, each with its record entry in the same transaction, which waits for all of it before it
 * ends. Lock the aircraft first.
 */
export async function writeActs(tx: Tx, written: Written): Promise<DefectRow> {
  const { aircraft, life } = written;
  const row = written.row ?? (await addRow(tx, written));
  const changes = columnsOf(life, written);
  tx.send(tx.defects.change(row.id, row.version, changes));
  tx.send(tx.aircraft.touch(aircraft));
  await writeInOrder(tx, written, row);
  return { ...row, ...changes, version: row.version + 1 };
}

async function writeInOrder(tx: Tx, written: Written, row: DefectRow): Promise<void> {
  const { acts, life } = written;
  const before = life.acts.length - acts.length;
  for (const [index, act] of acts.entries()) await writeAct(tx, written, row, act, before + index + 1);
}

async function writeAct(tx: Tx, { aircraft, now }: Written, row: DefectRow, act: Act, seq: number): Promise<void> {
  const people = await knownPeople(tx, [act]);
  const by: Actor | Signature = signerOfAct<Actor | Signature>(act);
  const payload = { number: row.number, act: recordedAct(act, people) };
  const entry = await tx.record.prepare({
    who: by.person,
    authorisation: authorisationIn(act, by),
    organisation: by.organisation,
    what: `defect.${act.kind}`,
    aircraft: { id: aircraft.id, registration: aircraft.registration },
    times: { ...(act.occurredAt ? { occurredAt: act.occurredAt } : {}), recordedAt: act.recordedAt, enteredAt: now },
    payload,
  });
  tx.send(entry.write());
  tx.send(
    tx.acts.add({
      id: act.id,
      defectId: row.id,
      seq,
      kind: act.kind,
      at: now,
      personId: by.person,
      payload: storedAct(act),
      entryId: entry.id,
    }),
  );
  for (const signature of signaturesOf(act)) tx.send(keepSignature(tx, entry, signature));
  await keepRegister(tx, aircraft, row, act, now);
}

/** The number of the authorisation it was done on, signed or not. */
function authorisationIn(act: Act, by: Actor | Signature): string | null {
  if ('on' in act) return act.on.number;
  return isSignature(by) ? by.authorisation.number : null;
}

async function addRow(tx: Tx, { aircraft, life, now }: Written): Promise<DefectRow> {
  const { id } = await tx.defects.add({ ...firstColumnsOf(aircraft, life, now), state: 'unanswered' });
  const row = await tx.defects.get(id);
  if (!row) throw new Error(`Defect ${id} was added and is not there.`);
  return row;
}

/** What is written when a defect is, and not changed by what comes after it. */
export function firstColumnsOf({ id: aircraftId }: Pick<AircraftRow, 'id'>, life: DefectLife, now: string) {
  return {
    id: life.defect,
    aircraftId,
    raisedBy: life.writtenBy.person,
    enteredAt: now,
    ...wordsOf(life),
  };
}

/** What a correction may put right. */
function wordsOf({ description, sheet, occurredAt, recordedAt }: DefectLife) {
  return { description, logPage: sheet, occurredAt, recordedAt };
}

/** What the acts add up to, for lists. */
export function columnsOf(life: DefectLife, { melRevisionId }: Pick<Written, 'melRevisionId'>): Partial<DefectRow> {
  const basis = life.deferral?.basis ?? null;
  const deadline = basis === null ? null : deadlineOf(life.limits);
  return {
    ...wordsOf(life),
    entry: life.item?.entry ?? null,
    subEntry: life.item?.subEntry ?? null,
    units: life.item?.units ?? [],
    melRow: basis?.kind === 'mel-row' ? basis.row : null,
    ...(melRevisionId === undefined ? {} : { melRevisionId }),
    signed: basis !== null,
    basis,
    state: stateOf(life),
    lastDay: deadline?.lastDay ?? null,
    endsAt: deadline?.endsAt ?? null,
    tzdb: deadline?.tzdb ?? null,
    closedAt: life.closed?.at ?? null,
  };
}
