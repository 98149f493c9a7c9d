/** Reads what came in, message by message, before anything is known of what came before. */
import { createHash } from 'node:crypto';
import { countingSettings } from '#intervals';
import { readMovements, type ReadingSettings, type TrayReason } from '#movements';
import type { OperatorRow } from '#store';
import type { OperatorSettings } from '../people/operator-settings.js';

/** Why something waits in the tray: what reading found, or what the server knows besides. */
export type WhyInTray = TrayReason | 'unknown-registration' | 'receipt-in-future' | 'differs-from-person';

/** One message out of a delivery. */
export interface ReadMessage {
  /** Where it begins, from 1. */
  line: number;
  text: string;
  /** Of the text, as 64 hex digits. */
  sha256: string;
  receivedAt: string;
  /** What it says; null when it is of no use. */
  said: Said | null;
  /** Why it is of no use. */
  unused: { reason: WhyInTray; sentence: string } | null;
}

export interface Said {
  type: 'MVT' | 'MVA' | 'DIV';
  correction: boolean;
  flight: string;
  scheduledOn: string;
  /** Letters and digits. */
  registration: string;
  station: string;
  warnings: string[];
  unknownLines: string[];
}

export type Reading = Pick<ReadingSettings, 'base' | 'airlineCodes' | 'rampReturnMakesFlightDay'>;

/** How this operator's messages are read. */
export function readingOf(operator: Pick<OperatorRow, 'settings'>, { deferral }: OperatorSettings): Reading {
  const { rampReturnMakesFlightDay } = countingSettings(deferral.preset, deferral.counting);
  return {
    base: deferral.base,
    airlineCodes: codesIn(operator.settings['airlineCodes']),
    rampReturnMakesFlightDay,
  };
}

/** In the order they stand in the text; the same one twice is read once. */
export function readDelivery(text: string, receivedAt: string, reading: Reading): ReadMessage[] {
  const { messages, tray } = readMovements(text, { ...reading, receivedAt });
  const read = messages.map((message): ReadMessage => {
    const { type, correction, flight, scheduledOn, registration, station, warnings, unknownLines } = message;
    return {
      ...whole(message.text, message.place.line, message.receivedAt),
      said: { type, correction, flight, scheduledOn, registration, station, warnings, unknownLines },
      unused: null,
    };
  });
  const used = new Set(read.map((message) => message.text));
  const unused = tray
    .filter((entry) => !used.has(entry.text))
    .map(({ text: left, place, receivedAt: at, reason, sentence }): ReadMessage => {
      return { ...whole(left, place.line, at ?? receivedAt), said: null, unused: { reason, sentence } };
    });
  return [...read, ...unused].sort((one, other) => one.line - other.line);
}

function whole(text: string, line: number, receivedAt: string) {
  return { line, text, sha256: sha256Of(text), receivedAt: new Date(receivedAt).toISOString() };
}

export function sha256Of(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}

function codesIn(set: unknown): Record<string, string> {
  // Settled through the list of settings they are written QOF=QO.
  if (Array.isArray(set)) return codesIn(Object.fromEntries(set.map((pair) => String(pair).split('='))));
  if (typeof set !== 'object' || set === null) return {};
  return Object.fromEntries(Object.entries(set).filter(([, code]) => typeof code === 'string')) as Record<
    string,
    string
  >;
}
