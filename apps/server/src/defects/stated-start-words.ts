/** From when use counts where a document states it, as the statement of a deferral names it: it decides when the interval ends. */
import type { StatedStartBody } from './bodies.js';
import type { StatementQuery } from './statements.js';

export function startWords({ at, counter, reading, readAt, document }: StatedStartBody): string {
  const from =
    at === undefined
      ? `${counted(counter)} on its counter, which read ${counted(reading)} at ${utc(readAt)}`
      : utc(at);
  return `Use counts from ${from}, as ${document} states.`;
}

/** Counters hold whole minutes where they count hours; whoever signs reads it as it stands on the counter, too. */
function counted(value: number | undefined): string {
  if (value === undefined) return '?';
  return `${value} (if it counts hours: ${Math.floor(value / 60)} h ${value % 60} min)`;
}

/** The same from the address where the statement is read; nothing where no document is named. */
export function startAsked(query: StatementQuery): { start?: string } {
  const { startAt, startCounter, startReading, startReadAt, startDocument } = query;
  if (startDocument === undefined) return {};
  const start: StatedStartBody = { document: startDocument };
  if (startAt !== undefined) start.at = startAt;
  if (startCounter !== undefined) start.counter = Number(startCounter);
  if (startReading !== undefined) start.reading = Number(startReading);
  if (startReadAt !== undefined) start.readAt = startReadAt;
  return { start: startWords(start) };
}

function utc(at: string | undefined): string {
  if (at === undefined) return '?';
  const [day = '', time = ''] = new Date(at)
    .toISOString()
    .replace(/(:00)?\.000Z$/, '')
    .split('T');
  return `${day} ${time.replace('Z', '')} UTC`;
}
