/** Which messages of a delivery are new, which aircraft they speak of, and which only a person can make use of. */
import type { AircraftRow, MovementMessageRow, Tx } from '#store';
import type { ReadMessage, WhyInTray } from './reading.js';

const DAY = 86_400_000;
/** How far ahead of ours the clock of a sender may be. */
export const SKEW_MS = 15 * 60_000;

export interface SortedMessage {
  read: ReadMessage;
  /** The message that it is a second delivery of. */
  known: MovementMessageRow | null;
  aircraft: AircraftRow | null;
  tray: { reason: WhyInTray; sentence: string } | null;
}

/** @param mending a person sends it in place of another, which may have the same text */
export async function sortedOut(
  tx: Tx,
  messages: readonly ReadMessage[],
  now: string,
  mending: boolean,
): Promise<SortedMessage[]> {
  const kept = await tx.movements.withTexts(messages.map(({ sha256 }) => sha256));
  const candidates = mending ? kept.filter(({ state }) => state === 'read') : kept;
  const marks = [...new Set(messages.flatMap(({ said }) => said?.registration ?? []))];
  const fleet = marks.length === 0 ? [] : await tx.aircraft.withMarks(marks);
  return messages.map((read) => {
    const known = candidates.find((row) => isSame(row, read)) ?? null;
    const aircraft = fleet.filter(({ registration }) => plain(registration) === read.said?.registration);
    const tray = read.unused ?? fromFuture(read, now) ?? unknownAircraft(read, aircraft);
    return { read, known, aircraft: aircraft.length === 1 ? (aircraft[0] ?? null) : null, tray };
  });
}

/** The same text about the same day; where no day could be read, the same text within the days that a message is about. */
function isSame(row: MovementMessageRow, { sha256, said, receivedAt }: ReadMessage): boolean {
  if (row.sha256 !== sha256 || row.scheduledOn !== (said?.scheduledOn ?? null)) return false;
  return said !== null || Math.abs(Date.parse(row.receivedAt) - Date.parse(receivedAt)) < 3 * DAY;
}

function fromFuture({ receivedAt }: ReadMessage, now: string): SortedMessage['tray'] {
  if (Date.parse(receivedAt) <= Date.parse(now) + SKEW_MS) return null;
  return {
    reason: 'receipt-in-future',
    sentence: `It is said to have been received at ${receivedAt}; it is ${now}.`,
  };
}

function unknownAircraft({ said }: ReadMessage, fitting: readonly AircraftRow[]): SortedMessage['tray'] {
  if (said === null || fitting.length === 1) return null;
  const sentence =
    fitting.length === 0
      ? `No aircraft of this operator is marked ${said.registration}.`
      : `${said.registration} may be any of ${fitting.map(({ registration }) => registration).join(', ')}.`;
  return { reason: 'unknown-registration', sentence };
}

function plain(registration: string): string {
  return registration.toUpperCase().replace(/[^A-Z0-9]/g, '');
}
