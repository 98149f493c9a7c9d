import { withOffset } from './time.js';
import { roleWords } from './words.js';

const INSTANT = /\d{4}-\d\d-\d\dT\d\d:\d\d(?::\d\d(?:\.\d+)?)?(?:Z|[+-]\d\d:\d\d)/g;

const ROLE = /\b(maintenance-control|mel-engineer)\b/g;

/** A sentence of the server with its instants as a clock in the zone reads them, and roles as people call them. */
export function readable(sentence: string, zone: string): string {
  return sentence.replace(INSTANT, (at) => withOffset(at, zone)).replace(ROLE, roleWords);
}

/** The same, with a capital and a full stop. */
export function sentence(text: string): string {
  const whole = text.trim();
  const stopped = /[.!?]$/.test(whole) ? whole : `${whole}.`;
  return stopped.charAt(0).toUpperCase() + stopped.slice(1);
}
