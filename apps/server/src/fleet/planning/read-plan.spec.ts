import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { COLUMNS, readPlan } from './read-plan.js';

const HEAD = COLUMNS.join(',');
const GOOD = 'QX 107,QXA,QXB,2026-12-01T05:30Z,2026-12-01T07:10Z,Q-ABC';
const faults = (...lines: string[]) => readPlan([HEAD, ...lines].join('\n')).faults;

const instants = fc
  .date({ min: new Date('2020-01-01T00:00Z'), max: new Date('2090-01-01T00:00Z'), noInvalidDate: true })
  .map((at) => `${at.toISOString().slice(0, 16)}Z`);
const flights = fc.record({
  flight: fc.stringMatching(/^[A-Z0-9]{1,6}( [0-9]{1,4})?$/),
  from: fc.stringMatching(/^[A-Z]{3}$/),
  to: fc.stringMatching(/^[A-Z]{3}$/),
  departure: instants,
  arrival: instants,
  aircraft: fc.stringMatching(/^[A-Z]-[A-Z]{3}$/),
});

describe('a list of flights', () => {
  it('reads as it was written, in any order of columns, with any of the separators, quoted or not', () => {
    const written = fc.record({
      list: fc.array(flights, { minLength: 1, maxLength: 8 }),
      columns: fc.shuffledSubarray([...COLUMNS], { minLength: COLUMNS.length }),
      between: fc.constantFrom(',', ';', '\t'),
      ends: fc.constantFrom('\n', '\r\n'),
      quote: fc.constantFrom('', '"'),
    });
    fc.assert(
      fc.property(written, ({ list, columns, between, ends, quote }) => {
        const rows = list.map((one) => columns.map((column) => `${quote}${one[column]}${quote}`).join(between));
        const read = readPlan(`\ufeff${[columns.join(between), ...rows].join(ends)}${ends}`);
        expect(read.faults).toEqual([]);
        const expected = list.map(({ flight, from, to, departure, arrival, aircraft }, index) => {
          const [offBlockAt, onBlockAt] = [departure, arrival].map((at) => at.replace('Z', ':00.000Z'));
          return { line: index + 2, number: flight, from, to, offBlockAt, onBlockAt, registration: aircraft };
        });
        expect(read.lines).toEqual(expected);
      }),
    );
  });

  it('never throws at what is no list', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 300, unit: 'grapheme' }), (text) => {
        expect(readPlan(text).faults).not.toEqual([]);
        expect(readPlan(`${HEAD}\n${text}`).lines).toEqual([]);
      }),
    );
  });

  it('every fault is named by line and column, all of them at once', () => {
    expect(faults(GOOD, 'qx 1,QXA,Q,2026-02-30T05:30Z,2026-12-01T07:10+02:00,Q_A')).toEqual([
      'line 3, flight: "qx 1" is not readable; write capital letters and digits as QX 107',
      'line 3, to: "Q" is not readable; write the code of a station as QXA',
      'line 3, departure: "2026-02-30T05:30Z" is not readable; write date and time in UTC as 2026-12-01T05:30Z',
      'line 3, arrival: "2026-12-01T07:10+02:00" is not readable; write date and time in UTC as 2026-12-01T05:30Z',
      'line 3, aircraft: "Q_A" is not readable; write the registration as Q-ABC',
    ]);
  });

  it('a time that does not say that it is UTC is refused, for it may be local', () => {
    expect(faults(GOOD.replace('T05:30Z', ' 05:30').replace('07:10Z', '07:10:00'))).toEqual([
      'line 2, departure: "2026-12-01 05:30" does not say of which zone it is; where it is UTC, write it with a Z as 2026-12-01T05:30Z',
      'line 2, arrival: "2026-12-01T07:10:00" does not say of which zone it is; where it is UTC, write it with a Z as 2026-12-01T05:30Z',
    ]);
    expect(faults(GOOD.replace('T05:30Z', ' 05:30Z'))).toEqual([]);
  });

  it('what was saved in another encoding than UTF-8 is told so', () => {
    const wide = new TextDecoder().decode(Buffer.from(`\ufeff${HEAD}\n${GOOD}`, 'utf16le'));
    const told = ['it holds signs that are no text; save the file as CSV in UTF-8 and take it again'];
    expect(readPlan(wide).faults).toEqual(told);
    expect(readPlan(new TextDecoder().decode(Buffer.from(`${HEAD}\nQX\xe9`, 'latin1'))).faults).toEqual(told);
  });

  it('a field too many or too few is told, and no field is taken for another', () => {
    expect(faults(`${GOOD},9`, 'QX 108,QXA')).toEqual([
      'line 2: it has 7 fields where 6 are named',
      'line 3: it has 2 fields where 6 are named',
    ]);
  });

  it('the line of names is needed, with each of them once and no other', () => {
    const told = (head: string) => readPlan(`${head}\n${GOOD}`).faults;
    expect(told(GOOD)).toEqual([`line 1: the first line names the columns: ${HEAD}`]);
    expect(told('flight,from,to,departure,arrival')).toEqual(['line 1: the column aircraft is missing']);
    expect(told(`${HEAD},to,crew`)).toEqual([
      'line 1: the column to is named twice',
      'line 1: there is no column "crew"; take it out',
    ]);
    expect(readPlan(HEAD).faults).toEqual(['there is no flight under the line of names']);
    expect(readPlan('').faults).toEqual(['there is nothing in it']);
    expect(readPlan(`${HEAD}\n"QX`).faults).toEqual([expect.stringMatching(/^line \d+: the quotes do not match$/)]);
  });

  it('more than the most is sent in parts', () => {
    expect(faults(...Array<string>(501).fill(GOOD))).toEqual([
      '501 flights at once; 500 are the most, so send it in parts',
    ]);
  });
});
