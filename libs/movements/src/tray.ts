import type { TrayEntry, TrayReason } from './message.js';
import type { DatedMessage } from './dated-message.js';
import type { Chunk } from './transmissions.js';

/** Text from outside, quoted short and on one line. */
export function quoted(text: string): string {
  return JSON.stringify(text.length > 60 ? `${text.slice(0, 60)}...` : text);
}

export function trayEntryOf({ lines, place, receipt }: Chunk, reason: TrayReason, sentence: string): TrayEntry {
  return { reason, sentence, place, text: lines.join('\n'), receivedAt: receipt?.at ?? null };
}

export function trayEntryFor(message: DatedMessage, reason: TrayReason, sentence: string): TrayEntry {
  const { place, text, receivedAt } = message;
  return { reason, sentence, place, text, receivedAt };
}

/** The same text received twice is one thing to look at. The first place stands. */
export function withoutRepeats(tray: readonly TrayEntry[]): TrayEntry[] {
  const seen = new Map<string, TrayEntry>();
  for (const entry of tray) {
    const key = JSON.stringify([entry.reason, entry.sentence, entry.text]);
    if (!seen.has(key)) seen.set(key, entry);
  }
  return [...seen.values()];
}
