import { Refusal } from '../refusal.js';

/** Refuses a text that is not there, or is nothing but spaces. */
export function needText(what: string, text: string): void {
  if (typeof text !== 'string' || text.trim() === '') throw new Refusal('text-missing', { what });
}
