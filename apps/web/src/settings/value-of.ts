/** What is typed or chosen for a setting, and what is sent for it. */
import type { Schemas } from '../api/client.js';

type Line = Schemas['SettingLine'];
export type Sent = string | number | boolean | string[] | null;

/** As it stands in the input. */
export function typedOf(value: unknown): string {
  if (value === null || value === undefined) return '';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  return Array.isArray(value) ? value.join(', ') : String(value);
}

/** A number that is none is sent as it was typed: the server says what is wrong with it. */
export function sentOf(takes: Line['takes'], typed: string): Sent {
  const text = typed.trim();
  switch (takes) {
    case 'yes-no':
      return text === 'yes';
    case 'whole':
      return /^\d+$/.test(text) ? Number(text) : text;
    case 'some-of':
    case 'codes':
      return text === '' ? [] : text.split(/[\s,]+/).length === 1 ? [text] : splitList(takes, text);
    default:
      return text;
  }
}

/** Codes hold no blank; what is chosen of a list may. */
function splitList(takes: 'some-of' | 'codes', text: string): string[] {
  const parts = text.split(takes === 'codes' ? /[\s,]+/ : /\s*,\s*/);
  return parts.filter((part) => part !== '');
}
