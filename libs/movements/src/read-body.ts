import type { MovementElement } from './elements/element.js';
import { readLine } from './elements/read-line.js';

/** The lines of a message below the flight line, read. */
export interface MessageBody {
  elements: MovementElement[];
  /** The free text after SI. */
  information: string | null;
  unknownLines: string[];
  /** What ought to read and does not; `line` counts from 0. */
  problems: { text: string; because: string; line: number }[];
}

/** SI and everything after it is free text. */
const freeText = /(?:^|\s)SI(?=\s|$)/;

export function readBody(lines: readonly string[]): MessageBody {
  const body: MessageBody = { elements: [], information: null, unknownLines: [], problems: [] };
  for (const [index, line] of lines.entries()) {
    const free = freeText.exec(line);
    const { elements, unknown, problem } = readLine(free ? line.slice(0, free.index) : line);
    body.elements.push(...elements);
    if (unknown !== null) body.unknownLines.push(unknown);
    if (problem) body.problems.push({ ...problem, line: index });
    if (free) {
      const first = line.slice(free.index + free[0].length).trimStart();
      return { ...body, information: [first, ...lines.slice(index + 1)].join('\n') };
    }
  }
  return body;
}
