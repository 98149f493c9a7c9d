/** What stands somewhere, as a reader sees it: times by the clock of the base, choices in words. */
import type { CorrectableField, WhenFound } from '#deferrals';
import { sayInstant } from '../deferrals/say-time.js';

export const FOUND: Readonly<Record<WhenFound, string>> = {
  'before-moving': 'before the aircraft moved',
  'own-power': 'moving under its own power, before take-off power',
  'after-take-off': 'after take-off',
};

export function isTime(field: CorrectableField): boolean {
  return field === 'occurredAt' || field === 'recordedAt' || field === 'doneAt';
}

/** Null where nothing stands. */
export function valueInWords(field: CorrectableField, value: string | null, base: string): string | null {
  if (value === null || value.trim() === '') return null;
  if (isTime(field)) return sayInstant(value, base);
  return field === 'whenFound' && Object.hasOwn(FOUND, value) ? FOUND[value as WhenFound] : value;
}

/** How it stands in the line of the history, so that it is struck there and nowhere else; see words-of-act.ts. */
export function asInTheLine(field: CorrectableField, words: string): string {
  return PHRASES[field]?.(words) ?? words;
}

const PHRASES: Partial<Record<CorrectableField, (words: string) => string>> = {
  sheet: (words) => `on sheet ${words}`,
  whenFound: (words) => `found ${words}`,
  unit: (words) => `unit ${words}`,
  issuedBy: (words) => `issued by ${words}`,
  limit: (words) => `limit: ${words}`,
  partNumber: (words) => `part ${words}`,
  serialOn: (words) => `serial ${words} fitted`,
  serialOff: (words) => `serial ${words} removed`,
  certificate: (words) => `certificate ${words}`,
};
