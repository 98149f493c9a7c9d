/** RFC 5545's own examples of folding (3.1) and of text (3.3.11), SEEN; and any text, read back by two other readers. */
import fc from 'fast-check';
import ICAL from 'ical.js';
import ical from 'node-ical';
import { describe, expect, it } from 'vitest';
import { instantValue, textValue, writeLines } from './content-lines.js';

/** RFC 5545 3.1: a CRLF followed by one space or tabulator is taken out. */
const unfold = (text: string): string => text.replace(/\r\n[ \t]/g, '');

const event = (...lines: [string, string][]): string =>
  writeLines([
    ['BEGIN', 'VCALENDAR'],
    ['VERSION', '2.0'],
    ['PRODID', '-//test//EN'],
    ['BEGIN', 'VEVENT'],
    ['UID', 'one'],
    ['DTSTAMP', '20260101T000000Z'],
    ['DTSTART', '20260101T000000Z'],
    ...lines,
    ['END', 'VEVENT'],
    ['END', 'VCALENDAR'],
  ]);

const readByIcalJs = (text: string, property: string): unknown => {
  const component = new ICAL.Component(ICAL.parse(text) as unknown[]);
  return component.getFirstSubcomponent('vevent')?.getFirstPropertyValue(property);
};
const readByNodeIcal = (text: string): string => {
  const [found] = Object.values(ical.parseICS(text)).filter((one) => one?.type === 'VEVENT');
  return found?.type === 'VEVENT' ? String(found.description) : 'no event';
};

describe('the lines of a calendar', () => {
  it('fold as the example of RFC 5545 3.1 is read', () => {
    const example = 'DESCRIPTION:This is a lo\r\n ng description\r\n  that exists on a long line.';
    expect(unfold(example)).toBe('DESCRIPTION:This is a long description that exists on a long line.');
    const lines: [string, string][] = [['DESCRIPTION', textValue(`${'This is a long description '.repeat(9)}.`)]];
    const written = writeLines(lines);
    expect(written.split('\r\n').length).toBeGreaterThan(3);
    expect(unfold(written)).toBe(`DESCRIPTION:${lines[0]?.[1]}\r\n`);
  });

  it('write the text of RFC 5545 3.3.11 as it stands there', () => {
    const text = 'Project XYZ Final Review\nConference Room - 3B\nCome Prepared.';
    expect(textValue(text)).toBe('Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.');
    expect(textValue('a\\b;c,d:"e"')).toBe('a\\\\b\\;c\\,d:"e"');
    expect(textValue('one\r\ntwo\rthree\u2028\u0007\tfour')).toBe('one\\ntwo\\nthree\\n\tfour');
  });

  it('fold at 75 octets and not at 75 characters, and split none', () => {
    const written = writeLines([
      ['SUMMARY', 'ä'.repeat(100)],
      ['SUMMARY', `${'a'.repeat(66)}😀😀`],
    ]);
    const lengths = written.split('\r\n').map((line) => Buffer.byteLength(line, 'utf8'));
    expect(Math.max(...lengths)).toBeLessThanOrEqual(75);
    expect(lengths.slice(0, 3)).toEqual([74, 75, 61]);
    expect(unfold(written)).toContain('😀😀');
    expect(writeLines([['SUMMARY', 'a'.repeat(67)]])).toBe(`SUMMARY:${'a'.repeat(67)}\r\n`);
    expect(writeLines([['SUMMARY', 'a'.repeat(68)]])).toBe(`SUMMARY:${'a'.repeat(67)}\r\n a\r\n`);
  });

  it('carry any text through two other readers, and nothing breaks out of its line', () => {
    const readable = fc
      .string({ unit: 'grapheme', maxLength: 200 })
      .filter((text) => text.isWellFormed() && text.trim() !== '');
    const hostile = fc.constantFrom(
      '\r\nEND:VEVENT\r\nBEGIN:VEVENT\r\nUID:two',
      '\nATTACH:x',
      '\u0000;,\\',
      '"',
      ':',
    );
    fc.assert(
      fc.property(readable, hostile, readable, (before, middle, after) => {
        const text = `${before}${middle}${after}`;
        const said = text
          .replace(/\r\n?|[\u0085\u2028\u2029]/g, '\n')
          .replace(/[\u0000-\u0008\u000b-\u001f\u007f]/g, '');
        const written = event(['DESCRIPTION', textValue(text)]);
        for (const line of written.split('\r\n')) {
          expect(Buffer.byteLength(line, 'utf8')).toBeLessThanOrEqual(75);
          expect(line.isWellFormed()).toBe(true);
        }
        expect(written.match(/^BEGIN:VEVENT/gm)).toHaveLength(1);
        expect(readByIcalJs(written, 'description')).toBe(said);
        // node-ical reads an escaped backslash before an n as a line break, where RFC 5545 3.3.11 has a backslash and an n.
        if (!/\\n/i.test(said)) expect(readByNodeIcal(written).trim()).toBe(said.trim());
      }),
      { numRuns: 300 },
    );
  });

  it('give instants in UTC without fractions', () => {
    expect(instantValue('2026-02-06T00:00:00+02:00')).toBe('20260205T220000Z');
    expect(instantValue('2026-02-05T23:30:00.123Z')).toBe('20260205T233000Z');
  });
});
