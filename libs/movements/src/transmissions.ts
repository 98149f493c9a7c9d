import type { Place } from './message.js';
import { readReceipt, type Receipt } from './receipt.js';
import { quoted } from './quoted.js';

/** A text as it came in, with the instant of its receipt (ISO 8601 with Z or an offset). */
export interface Transmission {
  text: string;
  receivedAt: string;
}

/** The lines of what may be one message, not yet read. */
export interface Chunk {
  lines: string[];
  place: Place;
  receipt: Receipt | null;
}

/** A line of ours between messages in a file: the messages after it were received then. */
const receivedLine = /^RECEIVED +(\S+)$/;

/** What begins a message. */
export const startLine = /^(COR )?(MVT|MVA|DIV)$/;

/** Address and origin lines of the network in front of a message; common practice, no source. */
const addressLine = /^(Q[A-Z]( [A-Z0-9]{7,8})+|\.[A-Z0-9]{7,8}( .*)?)$/;

/**
 * The chunks of several texts, each with the receipt of its text.
 * @param first which transmission the first one is
 * @throws RangeError for a receipt that is no instant
 */
export function chunksFrom(transmissions: readonly { text: string; receivedAt?: string }[], first = 1): Chunk[] {
  return transmissions.flatMap(({ text, receivedAt }, index) => {
    const receipt = receivedAt === undefined ? null : readReceipt(receivedAt);
    if (receivedAt !== undefined && !receipt) {
      throw new RangeError(`The receipt ${quoted(String(receivedAt))} is no instant such as 2026-01-21T11:20:00Z.`);
    }
    return chunksOf(text, receipt, first + index);
  });
}

/**
 * Cuts a text into chunks, one for each message. A message ends at a blank line, at ETX, or where the next one begins.
 * Line ends are CR LF, LF, or CR alone; other control characters and blanks at the ends of a line go; what stands
 * between SOH and STX is the envelope and no part of a message.
 */
export function chunksOf(text: string, receipt: Receipt | null, transmission: number): Chunk[] {
  const chunks: Chunk[] = [];
  let received = receipt;
  let open: Chunk | null = null;
  for (const { line, number } of linesOf(text)) {
    const stamp = receivedLine.exec(line)?.[1];
    if (stamp !== undefined) received = readReceipt(stamp);
    if (line === '' || stamp !== undefined) open = null;
    if (line === '' || (stamp !== undefined && received)) continue;
    if (open === null || (startLine.test(line) && !open.lines.every((before) => addressLine.test(before)))) {
      open = { lines: [], place: { transmission, line: number }, receipt: received };
      chunks.push(open);
    }
    open.lines.push(line);
  }
  return chunks.map(withoutAddress);
}

/** The lines with their numbers; ETX gives an empty line with the number of the line it stood in. */
function linesOf(text: string): { line: string; number: number }[] {
  const message = text.replace(/\r*\n|\r/g, '\n').replace(/\u0001[^\u0001\u0002\u0003]*\u0002/g, blanked);
  return message.split('\n').flatMap((line, index) =>
    line
      .replaceAll('\u0003', '\n\n')
      .split('\n')
      .map((part) => ({ line: part.replace(/\p{Cc}/gu, '').trim(), number: index + 1 })),
  );
}

/** An envelope leaves its line ends behind, so that places stay right. */
function blanked(envelope: string): string {
  return envelope.replace(/[^\n]/g, '');
}

function withoutAddress(chunk: Chunk): Chunk {
  const start = chunk.lines.findIndex((line) => startLine.test(line));
  if (start <= 0) return chunk;
  const place = { ...chunk.place, line: chunk.place.line + start };
  return { ...chunk, lines: chunk.lines.slice(start), place };
}
