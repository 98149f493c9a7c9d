import { Problem } from './problem.js';

const DEEPEST = 40;

/**
 * Refuses what no honest client sends, before any rule reads it: a body that is no object, U+0000 (PostgreSQL cannot keep it), half surrogate
 * pairs (no canonical form), and nesting deeper than any of our shapes.
 */
export function checkBody(body: unknown): void {
  const found: { pointer: string; reason: string }[] = [];
  if (body !== undefined && (typeof body !== 'object' || body === null || Array.isArray(body))) {
    found.push({ pointer: '', reason: 'the body is no JSON object' });
  }
  walk(body, '', 0, found);
  if (found.length > 0) throw new Problem('invalid-input', found[0]!.reason, { errors: found });
}

/** The same in an address: nothing stands under such a name, and no such thing is asked for. */
export function checkAddress(params: unknown, query: unknown): void {
  const found: { pointer: string; reason: string }[] = [];
  walk(params, '', 0, found);
  if (found.length > 0) throw new Problem('not-found', `In the address ${found[0]!.reason}.`);
  walk(query, '', 0, found);
  if (found.length > 0) throw new Problem('invalid-input', found[0]!.reason, { errors: found });
}

function walk(value: unknown, pointer: string, depth: number, found: { pointer: string; reason: string }[]): void {
  if (found.length >= 20) return;
  if (depth > DEEPEST) {
    found.push({ pointer, reason: `nested deeper than ${DEEPEST} levels` });
    return;
  }
  if (typeof value === 'string') {
    const reason = badText(value);
    if (reason) found.push({ pointer, reason });
    return;
  }
  if (typeof value !== 'object' || value === null) return;
  for (const [key, inner] of Object.entries(value)) {
    const at = `${pointer}/${key.replaceAll('~', '~0').replaceAll('/', '~1')}`;
    const reason = badText(key);
    if (reason) found.push({ pointer: at, reason });
    walk(inner, at, depth + 1, found);
  }
}

function badText(text: string): string | null {
  if (text.includes('\u0000')) return 'the text holds a NUL character (U+0000)';
  if (!text.isWellFormed()) return 'the text holds half of a surrogate pair';
  return null;
}
