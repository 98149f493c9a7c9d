/**
 * Lines of iCalendar (RFC 5545): text escaped (3.3.11), lines folded at 75 octets without splitting a character (3.1),
 * each ended by CRLF.
 *
 * Written here because the library that fits our runtimes leaves calendar names unescaped, puts properties behind the
 * events and ends without a line break.
 */
const MOST_OCTETS = 75;
const octetsOf = (text: string): number => Buffer.byteLength(text, 'utf8');

/** A property with its value as it is written after the colon. */
export type ContentLine = readonly [property: string, value: string];

/** Text as a value: control characters cannot stand in it, but for the tabulator; a line break of any kind is written as `\n`. */
export function textValue(text: string): string {
  return text
    .replace(/\r\n?|[\u0085\u2028\u2029]/g, '\n')
    .replace(/[\u0000-\u0008\u000b-\u001f\u007f]/g, '')
    .replace(/[\\;,]/g, (character) => `\\${character}`)
    .replaceAll('\n', '\\n');
}

/** `2026-02-05T23:00:00Z` as a value: UTC, without fractions. */
export function instantValue(at: string): string {
  return `${new Date(at).toISOString().slice(0, 19).replaceAll(/[-:]/g, '')}Z`;
}

/** @param lines with values as `textValue` and `instantValue` write them */
export function writeLines(lines: readonly ContentLine[]): string {
  return lines.map(([property, value]) => `${fold(`${property}:${value}`)}\r\n`).join('');
}

/** Every line after the first one begins with a space, which counts. */
function fold(line: string): string {
  const folded: string[] = [];
  let rest = '';
  for (const character of line) {
    if (octetsOf(rest) + octetsOf(character) > MOST_OCTETS) {
      folded.push(rest);
      rest = ' ';
    }
    rest += character;
  }
  return [...folded, rest].join('\r\n');
}
