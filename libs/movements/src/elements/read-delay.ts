import type { Delay } from './element.js';
import { readDuration, Unreadable } from './time-group.js';

/** `72/0015` or `64/72/0015/0020`: codes first, then as many durations, by position. */
export function readDelays(text: string): Delay[] {
  const parts = text.split('/');
  const half = parts.length / 2;
  const codes = parts.slice(0, half);
  const durations = parts.slice(half);
  const paired = Number.isInteger(half) && half <= 2;
  if (!paired || !codes.every((code) => /^\d\d$/.test(code)) || !durations.every((part) => /^\d{4}$/.test(part))) {
    throw new Unreadable('is no list of one or two codes and as many durations');
  }
  return codes.map((code, index) => ({ code, minutes: readDuration(durations[index] as string) }));
}

/** `31C/62A//`: up to four sub-codes, an empty slot standing for a reason without one. */
export function readDelayDetails(text: string): (string | null)[] {
  const slots = text.split('/');
  if (slots.length > 4 || !slots.every((slot) => /^([A-Z0-9]{2,3})?$/.test(slot))) {
    throw new Unreadable('is no list of up to four sub-codes');
  }
  return slots.map((slot) => slot || null);
}
