/** Codes of the interface in the words that people use. */
import type { Schemas } from '../api/client.js';

export type Truth = 'F' | 'U' | 'T';

export interface NowAfter {
  now: Truth;
  after: Truth;
}

const LEFT_KINDS: Record<string, string> = {
  breaker: 'Breaker pulled and collared',
  'lock-pin': 'Lock pin fitted',
  'valve-position': 'Valve locked in position',
  'connector-capped': 'Connector capped',
  'panel-open': 'Panel open',
  'equipment-removed': 'Equipment removed',
  placard: 'Placard',
  tool: 'Tool',
};

export const LEFT_KIND_CODES = Object.keys(LEFT_KINDS);

export const leftKind = (kind: string): string => LEFT_KINDS[kind] ?? kind;

const ROLES: Record<string, string> = {
  'maintenance-control': 'maintenance control',
  'mel-engineer': 'MEL engineer',
  cabin: 'cabin crew',
};

const PRIVILEGES: Record<string, string> = {
  'write-up': 'write up',
  'sign-procedure': 'sign work done',
  'judge-combination': 'judge the combination',
  'confirm-card': 'confirm a card',
};

export const privilegeWords = (privilege: string): string => PRIVILEGES[privilege] ?? privilege;

const METHODS: Record<string, string> = {
  password: 'signed with the secret',
  passkey: 'signed with a passkey',
  'single-sign-on': 'signed after a fresh sign-on',
  paper: 'signed on paper',
};

export const methodWords = (method: string): string => METHODS[method] ?? method;

export const roleWords = (role: string): string => ROLES[role] ?? role;

/** `technician or maintenance control` */
export const anyOf = (roles: readonly string[]): string => roles.map(roleWords).join(' or ');

/** Whether a condition holds, in words. */
export function truthWords({ now, after }: NowAfter): string {
  if (now === 'T') return 'holds';
  if (after === 'F') return 'does not hold';
  if (now === 'F' && after === 'T') return 'to be done';
  if (now === 'F') return 'to be done; not known whether it can be';
  return 'not known';
}

export type Standing = 'holds' | 'refused' | 'to-do' | 'open';

export function standingOf({ now, after }: NowAfter): Standing {
  if (now === 'T') return 'holds';
  if (after === 'F') return 'refused';
  return now === 'F' && after === 'T' ? 'to-do' : 'open';
}

/** `2 open items`, `1 open item`, `nothing open`. */
export function counted(count: number, one: string, many: string, none: string): string {
  if (count === 0) return none;
  return count === 1 ? `1 ${one}` : `${count} ${many}`;
}

export function minutesWords(minutes: number | null): string {
  return minutes === null ? 'time not given' : `${minutes} min`;
}

export function stateWords(state: string): string {
  return state === 'unanswered' ? 'write-up not answered' : state;
}

/** A value of a fact as read: yes, no, or as it is. */
export function valueWords(value: unknown): string {
  if (value === true) return 'yes';
  if (value === false) return 'no';
  if (Array.isArray(value)) return value.map(valueWords).join(' or ');
  return value === null || value === undefined ? 'not known' : String(value);
}

/** `2`, or `one of 1, 2: not known which`. */
export function unitsWords({ units, oneOf }: Pick<Schemas['DefectLine'], 'units' | 'oneOf'>): string {
  if (units.length === 0) return '';
  return oneOf ? `one of ${units.join(', ')}: not known which` : (units[0] ?? '');
}

/** Title and unit. */
export function itemName(defect: Pick<Schemas['DefectLine'], 'title' | 'units' | 'oneOf' | 'entry'>): string {
  const unit = defect.entry === null ? '' : unitsWords(defect);
  return unit === '' ? defect.title : `${defect.title}, ${unit}`;
}

/** The steps of a procedure: its sentences, one by one. */
export function stepsOf(text: string): string[] {
  return text
    .split(/(?<=[.!?])\s+(?=["'(]?[A-Z])/)
    .map((step) => step.trim())
    .filter((step) => step !== '');
}

/** `/item/entry` as `item entry`. */
export function pointerWords(pointer: string): string {
  return pointer
    .split('/')
    .filter((part) => part !== '')
    .map((part) => part.replace(/([a-z])([A-Z])/g, '$1 $2').toLowerCase())
    .join(' ');
}

/** `the unit` -> `The unit`. */
export function capital(words: string): string {
  return words.slice(0, 1).toUpperCase() + words.slice(1);
}
