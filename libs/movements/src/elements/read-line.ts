import type { MovementElement } from './element.js';
import { elementReaders } from './element-readers.js';
import { Unreadable } from './time-group.js';

/** What one line gave: elements, then either a rest nobody knows or a rest that ought to read and does not. */
export interface ReadLine {
  elements: MovementElement[];
  unknown: string | null;
  problem: { text: string; because: string } | null;
}

/**
 * Reads the elements of a line from the left; several may share a line, as in `AD221115 EO1135 EA1530 QXB`. It stops at
 * the first one it does not know (kept verbatim) or cannot read (a problem), since what follows may depend on it.
 */
export function readLine(line: string): ReadLine {
  const elements: MovementElement[] = [];
  let rest = line.trim();
  while (rest !== '') {
    const found = identifierOf(rest);
    if (found === null) return { elements, unknown: rest, problem: null };
    const { element, length, because } = readElement(found, rest);
    if (element === null) return { elements, unknown: null, problem: { text: rest, because } };
    elements.push(element);
    rest = rest.slice(length).trimStart();
  }
  return { elements, unknown: null, problem: null };
}

/** Free text may begin like an identifier (ADDITIONAL FUEL); an element always holds a digit or a stroke. */
function identifierOf(rest: string): string | null {
  const token = /^\S+/.exec(rest)?.[0] ?? '';
  for (const identifier of elementReaders.keys()) {
    if (token.startsWith(identifier) && (/[\d/]/.test(token) || token === identifier)) return identifier;
  }
  return null;
}

function readElement(identifier: string, rest: string) {
  const { pattern, read } = elementReaders.get(identifier) as NonNullable<ReturnType<typeof elementReaders.get>>;
  pattern.lastIndex = identifier.length;
  const match = pattern.exec(rest);
  const length = pattern.lastIndex;
  const shape = `does not read as ${identifier}`;
  if (match === null || /\S/.test(rest.charAt(length))) return { element: null, length: 0, because: shape };
  try {
    return { element: read(match.slice(1)), length, because: '' };
  } catch (problem) {
    if (problem instanceof Unreadable) return { element: null, length: 0, because: problem.message };
    throw problem;
  }
}
