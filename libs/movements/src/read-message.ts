import type { DatedMessage } from './dated-message.js';
import { readFlightLine, type FlightLine } from './flight-line.js';
import type { MovementMessage, TrayEntry, TrayReason } from './message.js';
import { readBody, type MessageBody } from './read-body.js';
import { scheduledDayOf } from './scheduled-day.js';
import type { ReadingSettings } from './settings.js';
import { startLine, type Chunk } from './transmissions.js';
import { quoted } from './quoted.js';
import { trayEntryOf } from './tray.js';
import { writeDay } from './utc-minute.js';

export interface ReadChunk {
  message: DatedMessage | null;
  tray: TrayEntry[];
}

const movements = ['AD', 'ED', 'NI', 'EO', 'RR', 'FR', 'AA', 'EA', 'EB'];
const ofDeparture = movements.slice(0, 6);

/** Reads one chunk. An element that does not read goes to the tray, and the rest of its message stands. */
export function readChunk(chunk: Chunk, settings: ReadingSettings): ReadChunk {
  const refuse = (reason: TrayReason, sentence: string): ReadChunk => {
    return { message: null, tray: [trayEntryOf(chunk, reason, sentence)] };
  };
  const [first = '', second = '', ...rest] = chunk.lines;
  const start = startLine.exec(first);
  if (!start) return refuse('no-message', `${quoted(first)} is not the MVT, MVA or DIV that begins a message.`);
  const line = readFlightLine(second, settings.airlineCodes);
  if (!line) return refuse('flight-line', `${quoted(second)} is no flight line such as ZZ200/21.QABAX.QXA.`);
  const { receipt } = chunk;
  if (!receipt) return refuse('receipt', `${quoted(second)} has no day: it is not known when it was received.`);
  const scheduledDay = scheduledDayOf(line.day, receipt.minute, settings);
  if (scheduledDay === null)
    return refuse('day', `${quoted(second)} names no day near its receipt at ${receipt.at}.`);
  const body = readBody(rest);
  const has = (kinds: string[]) => body.elements.some(({ kind }) => kinds.includes(kind));
  if (has(['AA']) && has(ofDeparture)) {
    return refuse('conflict', `${quoted(second)} reports a departure and an arrival at the same station.`);
  }
  const type = start[2] as MovementMessage['type'];
  const message = messageOf(chunk, line, body, { type, correction: start[1] !== undefined, scheduledDay, receipt });
  return { message, tray: bodyTray(chunk, body, has(movements)) };
}

type Heading = Pick<DatedMessage, 'type' | 'correction' | 'scheduledDay' | 'receipt'>;

function messageOf(chunk: Chunk, line: FlightLine, body: MessageBody, heading: Heading): DatedMessage {
  const { flight, registration, station } = line;
  const { elements, information, unknownLines } = body;
  const nowhere = elements.some((element) => element.kind === 'EA' && element.airport === null);
  const leaving = heading.type === 'DIV' || elements.some(({ kind }) => ofDeparture.includes(kind));
  return {
    ...heading,
    flight,
    scheduledOn: writeDay(heading.scheduledDay),
    registration,
    station,
    elements,
    information,
    unknownLines,
    warnings:
      nowhere && leaving
        ? [...line.warnings, 'EA names no airport, so the destination is not known.']
        : line.warnings,
    text: chunk.lines.join('\n'),
    receivedAt: heading.receipt.at,
    place: chunk.place,
  };
}

function bodyTray(chunk: Chunk, { problems }: MessageBody, moves: boolean): TrayEntry[] {
  if (problems.length === 0 && !moves) {
    return [trayEntryOf(chunk, 'nothing-reported', `${quoted(chunk.lines[1] ?? '')} reports no movement.`)];
  }
  return problems.map(({ text, because, line }) => {
    const place = { ...chunk.place, line: chunk.place.line + 2 + line };
    return trayEntryOf({ ...chunk, place }, 'element', `${quoted(text)} ${because}.`);
  });
}
