/** Invented MELs, aircraft and days of the sizes that the reasoner is measured by. Everything is drawn from a seed. */
import { situation } from './bench-mel.mjs';

/** The same throws from the same seed (a linear congruential generator with its bits mixed). */
export function dice(seed) {
  let state = seed >>> 0;
  return (most) => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    const mixed = Math.imul(state ^ (state >>> 16), 0x21f0_aaad);
    return ((mixed ^ (mixed >>> 15)) >>> 0) % (most + 1);
  };
}

const numberOf = (index) => `${21 + Math.floor(index / 40)}-${10 + (index % 40)}-01`;
const leaf = (fact, operator, value) => ({ fact, operator, value });
const up = (entry) => ({ ...leaf('entry.up', 'greaterThanInclusive', 1), params: { entry } });

const CONDITIONS = [
  () => leaf('flight.level', 'lessThanInclusive', 330),
  () => leaf('flight.etopsMinutes', 'lessThanInclusive', 120),
  () => ({ any: [leaf('flight.daylight', 'equal', 'day'), leaf('flight.conditions', 'equal', 'vmc')] }),
  () => ({ not: leaf('flight.runwayState', 'equal', 'contaminated') }),
  () => leaf('flight.icing', 'equal', 'none'),
];

function content(entries) {
  return {
    format: 'proviso-mel/1',
    document: 'MEL-BENCH-2',
    operator: 'none',
    aircraftType: 'Kellwing',
    revision: '1',
    effectiveOn: '2026-01-01',
    notice: 'INVENTED, for measuring only.',
    entries,
  };
}

const entryOf = (number, units, rows) => ({
  number,
  title: `Item ${number}`,
  chapter: number.slice(0, 2),
  subEntries: [{ id: 'all', units, rows }],
});

/**
 * Entries as MELs have them: each row asks for something of the flight and for another entry to work, the later rows for
 * work too, and every fourth row calls another item considered inoperative.
 */
export function everydayMel(entries, rows) {
  const throwUpTo = dice(7);
  return content(
    Array.from({ length: entries }, (_, at) =>
      entryOf(
        numberOf(at),
        ['1', '2'],
        Array.from({ length: rows }, (_, row) => ({
          id: String(row + 1),
          category: 'C',
          numberRequired: 1,
          remarks: 'Invented, for measuring only.',
          provisos: [
            { id: 'a', text: 'Proviso a', when: CONDITIONS[(at + row) % CONDITIONS.length]() },
            { id: 'b', text: 'Proviso b', when: up(numberOf((at + 1 + throwUpTo(3)) % entries)) },
          ],
          ...((at + row) % 4 === 3
            ? { consideredInoperative: [{ entry: numberOf((at + 5) % entries), units: ['2'] }] }
            : {}),
          ...(row === 0 ? {} : { procedures: [{ id: 'M1', kind: 'M', text: 'Secure it.', minutes: 10 * row }] }),
        })),
      ),
    ),
  );
}

/**
 * Adversarial: each row calls two of so many items considered inoperative and needs two others of them to work. With about
 * three to four such items for each defect most choices break somewhere, and hardly any can be left out unseen.
 */
export function adversarialMel(defects, rows, items, seed) {
  const throwUpTo = dice(seed);
  const itemOf = (index) => `60-${100 + index}`;
  const two = () => [...new Set([throwUpTo(items - 1), throwUpTo(items - 1)])].map(itemOf);
  return content([
    ...Array.from({ length: defects }, (_, at) =>
      entryOf(
        numberOf(at),
        ['1'],
        Array.from({ length: rows }, (_, row) => ({
          id: String(row + 1),
          category: 'C',
          numberRequired: 0,
          remarks: 'Invented, for measuring only.',
          consideredInoperative: two().map((entry) => ({ entry })),
          provisos: two().map((entry, index) => ({ id: 'ab'[index], text: 'Another item works.', when: up(entry) })),
        })),
      ),
    ),
    ...Array.from({ length: items }, (_, index) =>
      entryOf(
        itemOf(index),
        ['1'],
        [{ id: '1', category: 'C', numberRequired: 0, remarks: 'Invented, for measuring only.' }],
      ),
    ),
  ]);
}

/** An aircraft with the first so many entries open, under their first rows. Each aircraft has other days of record. */
export function aircraft(mel, defects, index = 0) {
  const { flight: _flight, ...rest } = situation(1);
  const step = Math.max(1, Math.floor(mel.entries.length / 7));
  const chosen = Array.from({ length: defects }, (_, at) =>
    mel.entries.length > 40 && index > 0 ? (index + at * step) % mel.entries.length : at,
  );
  return {
    ...rest,
    flight: null,
    aircraft: { ...rest.aircraft, registration: `Q-B${index}` },
    defects: [...new Set(chosen)].map((at) => {
      const day = 12 + ((at + index) % 8);
      return {
        id: `d${String(at).padStart(3, '0')}`,
        entry: mel.entries[at].number,
        units: ['1'],
        row: '1',
        signed: true,
        recordedAt: `2026-01-${day}T08:00:00Z`,
        used: { flights: 3, flightDays: 1, flightMinutes: 300, cycles: 3 },
      };
    }),
  };
}

/** A day's flights, three hours apart; every fifth is high, every seventh far from land, the late ones by night. */
export function day(flights, index = 0) {
  const start = Date.parse('2026-01-20T10:00:00Z');
  return Array.from({ length: flights }, (_, at) => ({
    id: `f${at}`,
    from: at % 2 === 0 ? 'QAA' : 'QBB',
    to: at % 2 === 0 ? 'QBB' : 'QAA',
    offBlockAt: new Date(start + at * 180 * 60_000).toISOString(),
    onBlockAt: new Date(start + (at * 180 + 120) * 60_000).toISOString(),
    flightMinutes: 100,
    facts: {
      'flight.level': (at + index) % 5 === 4 ? 350 : 310,
      'flight.icing': 'none',
      'flight.etopsMinutes': (at + index) % 7 === 6 ? 180 : 0,
      'flight.daylight': at % 4 === 3 ? 'night' : 'day',
      'flight.runwayState': 'dry',
      'flight.conditions': 'imc',
    },
  }));
}
