import type { TrayEntry, TrayReason } from './message.js';
import type { DatedMessage } from './dated-message.js';
import type { Chunk } from './transmissions.js';

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
    const key = trayKey(entry);
    if (!seen.has(key)) seen.set(key, entry);
  }
  return [...seen.values()];
}

/** What makes two entries one thing to look at. */
export function trayKey({ reason, sentence, text }: TrayEntry): string {
  return JSON.stringify([reason, sentence, text]);
}
