/** Writes versions of legs, each with its entry in the record, in the transaction that holds the aircraft. */
import { type AircraftRow, type LegRow, newId, type Tx } from '#store';
import type { LegContent } from './leg-content.js';

/** Who says so, and why. */
export interface SaidBy {
  source: LegRow['source'];
  /** Who sent the messages, or entered the leg; null where the program took them out of a folder. */
  personId: string | null;
  reason: string | null;
  now: string;
}

export interface ToWrite {
  /** Null for a new leg. */
  of: LegRow | null;
  content: LegContent;
  messageId: string | null;
}

/** @param aircraft all that the versions are of, before and after */
export async function writeLegs(
  tx: Tx,
  versions: readonly ToWrite[],
  aircraft: readonly AircraftRow[],
  by: SaidBy,
): Promise<LegRow[]> {
  const next = versions.map(({ of, content, messageId }) => {
    return { of, content, messageId, id: of?.id ?? newId(), version: (of?.version ?? 0) + 1 };
  });
  const entries = await tx.record.appendAll(
    next.map(({ of, content, id, version }) => ({
      who: by.personId,
      authorisation: null,
      organisation: null,
      what: whatOf(of, content, by.source),
      aircraft: aircraftOf(content.aircraftId, aircraft),
      times: { occurredAt: content.offBlockAt, enteredAt: by.now },
      payload: { leg: id, version, ...content, reason: by.reason },
    })),
  );
  const { source, reason, now } = by;
  const personId = source === 'person' ? by.personId : null;
  const written = next.map(({ content, messageId, id, version }, index): LegRow => {
    const said = { source, messageId, personId, reason, writtenAt: now, entryId: entries[index]?.id ?? '' };
    return { ...content, id, version, ...said, operatorId: tx.operatorId };
  });
  await tx.legs.add(written);
  const touched = new Set(
    versions.flatMap(({ of, content }) => [of?.aircraftId ?? content.aircraftId, content.aircraftId]),
  );
  await tx.aircraft.touchAll(aircraft.filter(({ id }) => touched.has(id)));
  return written;
}

function whatOf(of: LegRow | null, { ending }: LegContent, source: LegRow['source']): string {
  if (ending === 'withdrawn') return 'leg.withdrawn';
  if (source === 'messages') return 'leg.reported';
  return of === null ? 'leg.entered' : 'leg.corrected';
}

function aircraftOf(id: string, aircraft: readonly AircraftRow[]): AircraftRow {
  const found = aircraft.find((one) => one.id === id);
  if (!found) throw new Error(`The aircraft ${id} is not held.`);
  return found;
}
