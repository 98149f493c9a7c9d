/** What is answered about movements, made of what is kept. */
import { countersOf, type FlownLeg } from '#movements';
import type { AircraftRow, DefectRow, LegRow, MovementTrayRow, TrayItem, Tx } from '#store';
import { defectNumber } from '../defects/views.js';
import { legOfRow } from './flown-legs.js';
import type { Received } from './intake.service.js';
import type { LegsService } from './legs.service.js';

/** Aircraft defects, items of the MEL among them (IATA AHM 730). */
const AIRCRAFT_DEFECT = '41';
const DAY = 86_400_000;

type Names = ReadonlyMap<string, { name: string }>;

export async function namesOf(tx: Tx, ids: readonly (string | null)[]): Promise<Names> {
  return tx.people.known([...new Set(ids.flatMap((id) => id ?? []))]);
}

export function legLine(row: LegRow, names: Names) {
  return {
    id: row.id,
    version: row.version,
    aircraft: row.aircraftId,
    flight: row.flight,
    scheduledOn: row.scheduledOn,
    sequence: row.sequence,
    from: row.fromStation,
    to: row.toStation,
    ending: row.ending,
    offBlockAt: row.offBlockAt,
    airborneAt: row.airborneAt,
    landedAt: row.landedAt,
    onBlockAt: row.onBlockAt,
    blockMinutes: row.blockMinutes,
    flightMinutes: row.flightMinutes,
    cycles: row.cycles,
    landings: row.landings,
    missing: row.missing,
    delays: row.delays,
    diverted: row.divertedFrom === null ? null : { from: row.divertedFrom, reason: row.divertedReason },
    planned: row.flightId,
    source: row.source,
    message: row.messageId,
    by: row.personId === null ? null : (names.get(row.personId)?.name ?? '(name erased)'),
    reason: row.reason,
    writtenAt: row.writtenAt,
  };
}

export async function trayLines(tx: Tx, items: readonly TrayItem[]) {
  const names = await namesOf(
    tx,
    items.flatMap(({ entry, delivery }) => [entry.closedBy, delivery.sentBy]),
  );
  const nameOf = (id: string | null) => (id === null ? null : (names.get(id)?.name ?? '(name erased)'));
  return items.map(({ entry, message, delivery }) => ({
    id: entry.id,
    reason: entry.reason,
    sentence: entry.sentence,
    state: entry.state,
    openedAt: entry.openedAt,
    closedAt: entry.closedAt,
    closedBy: nameOf(entry.closedBy),
    why: entry.why,
    mendedWith: entry.mendedWith,
    message: message.id,
    text: message.text,
    inUse: message.state === 'read',
    receivedAt: message.receivedAt,
    cameBy: delivery.cameBy,
    sentBy: nameOf(delivery.sentBy),
    flight: message.flight,
    scheduledOn: message.scheduledOn,
    registration: message.registration,
    aircraft: message.aircraftId,
  }));
}

async function asItems(tx: Tx, entries: readonly MovementTrayRow[]): Promise<TrayItem[]> {
  return tx.movements.withMessages(entries);
}

export async function receivedView(tx: Tx, received: Received, at: string) {
  const { messages, legs, opened, settled, items, answers, deliveryId } = received;
  const names = await namesOf(
    tx,
    legs.map(({ personId }) => personId),
  );
  return {
    at,
    delivery: deliveryId,
    messages: messages.map(({ read, row, isNew }) => ({
      id: row.id,
      line: read.line,
      state: isNew ? row.state : ('duplicate' as const),
      type: read.said?.type ?? null,
      correction: read.said?.correction ?? false,
      flight: row.flight,
      scheduledOn: row.scheduledOn,
      registration: row.registration,
      aircraft: row.aircraftId,
      station: read.said?.station ?? null,
      receivedAt: row.receivedAt,
      warnings: read.said?.warnings ?? [],
      unknownLines: read.said?.unknownLines ?? [],
      text: row.text,
    })),
    legs: legs.map((leg) => legLine(leg, names)),
    tray: await trayLines(tx, await asItems(tx, opened)),
    settled: await trayLines(tx, await asItems(tx, settled)),
    items,
    answers,
  };
}

type Shown = Awaited<ReturnType<LegsService['ofAircraft']>>;

export async function legsView(tx: Tx, { at, from, aircraft, legs, versions, defects, reading }: Shown) {
  const names = await namesOf(
    tx,
    versions.map(({ personId }) => personId),
  );
  const { byRegistration: _, ...counters } = countersOf(legs.map(flownLeg), reading);
  return {
    at,
    from,
    aircraft: aircraft.id,
    registration: aircraft.registration,
    counters,
    legs: legs.map((leg) => ({
      ...legLine(leg, names),
      history: versions
        .filter(({ id, version }) => id === leg.id && version < leg.version)
        .map((row) => legLine(row, names)),
    })),
    delayed: legs.flatMap((leg) => delayedBy(leg, aircraft, defects)),
  };
}

function flownLeg(row: LegRow): FlownLeg {
  return {
    ...legOfRow(row),
    flight: row.flight,
    scheduledOn: row.scheduledOn,
    registration: row.aircraftId,
    from: row.fromStation,
    to: row.toStation,
    ending: row.ending === 'withdrawn' ? 'ramp' : row.ending,
    sequence: row.sequence,
    delays: row.delays,
    missing: row.missing as FlownLeg['missing'],
  };
}

/** A delay for an aircraft defect, beside the defects that were open within a day before it left or until it was over. */
function delayedBy(leg: LegRow, aircraft: AircraftRow, defects: readonly DefectRow[]) {
  const minutes = leg.delays
    .filter(({ code }) => code === AIRCRAFT_DEFECT)
    .reduce((sum, one) => sum + one.minutes, 0);
  if (!leg.delays.some(({ code }) => code === AIRCRAFT_DEFECT)) return [];
  const from = new Date(Date.parse(leg.offBlockAt) - DAY).toISOString();
  const until = leg.onBlockAt ?? leg.landedAt ?? leg.airborneAt ?? leg.offBlockAt;
  const open = defects.filter(
    ({ recordedAt, closedAt }) => recordedAt <= until && (closedAt === null || closedAt >= from),
  );
  return [
    {
      leg: leg.id,
      flight: leg.flight,
      offBlockAt: leg.offBlockAt,
      minutes,
      defects: open.map((row) => ({
        id: row.id,
        number: defectNumber(aircraft, row),
        description: row.description,
        entry: row.entry,
        state: row.state,
        recordedAt: row.recordedAt,
        closedAt: row.closedAt,
      })),
    },
  ];
}
