import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readMovements, type ReadMovements, type Transmission } from './index.js';

const midnight = Date.UTC(2026, 0, 21);
const stations = ['QXA', 'QXB', 'QXC', 'QXD'];
const two = (number: number) => String(number).padStart(2, '0');
const instant = (minute: number) => new Date(midnight + minute * 60_000).toISOString().replace('.000', '');
const day = (minute: number) => two(new Date(midnight + minute * 60_000).getUTCDate());
const clock = (minute: number) => two(Math.floor(minute / 60) % 24) + two(minute % 60);

/** A day of one aircraft as it truly was: legs one after the other, each with what went wrong on it. */
interface TrueLeg {
  how: 'arrived' | 'returned' | 'ramp';
  off: number;
  taxi: number;
  air: number;
  taxiIn: number;
  from: string;
  to: string;
  flight: string;
}

const leg = fc.record({
  how: fc.constantFrom('arrived' as const, 'arrived' as const, 'returned' as const, 'ramp' as const),
  pause: fc.integer({ min: 20, max: 240 }),
  taxi: fc.integer({ min: 1, max: 45 }),
  air: fc.integer({ min: 10, max: 420 }),
  taxiIn: fc.integer({ min: 0, max: 20 }),
  sixDigits: fc.boolean(),
  delay: fc.integer({ min: 1, max: 10 }),
  via: fc.integer({ min: 1, max: 3 }),
});
const history = fc.array(leg, { minLength: 1, maxLength: 6 }).map(flown);

function flown(plan: readonly (typeof leg extends fc.Arbitrary<infer T> ? T : never)[]) {
  const [legs, sent]: [TrueLeg[], Transmission[]] = [[], []];
  let [now, place, number, scheduled] = [5 * 60, 0, 100, 5 * 60];
  for (const { how, pause, taxi, air, taxiIn, sixDigits, delay, via } of plan) {
    const off = now + pause;
    if (legs.at(-1)?.how === 'arrived' || legs.length === 0) [number, scheduled] = [number + 1, off];
    const next = (place + via) % stations.length;
    const [from = '', to = ''] = [stations[place], stations[next]];
    const flight = `ZZ${number}`;
    const group = (minute: number) => (sixDigits ? day(minute) : '') + clock(minute);
    const say = (station: string, at: number, line: string) => {
      const text = `MVT\nZZ${number}/${day(scheduled)}.QABAX.${station}\n${line}`;
      sent.push({ text, receivedAt: instant(at + delay) });
    };
    const [up, down] = [off + taxi, off + taxi + air];
    if (how === 'ramp') {
      say(from, up, `AD${group(off)} RR${group(up)}`);
    } else {
      say(from, up, `AD${group(off)}/${group(up)} EA${clock(down)} ${to}`);
      say(
        how === 'arrived' ? to : from,
        down + taxiIn,
        `${how === 'arrived' ? 'AA' : 'FR'}${group(down)}/${group(down + taxiIn)}`,
      );
    }
    legs.push({ how, off, taxi, air, taxiIn, from, to: how === 'arrived' ? to : from, flight });
    now = how === 'ramp' ? up : down + taxiIn;
    if (how === 'arrived') place = next;
  }
  return { legs, sent };
}

const essence = ({ legs, counters }: ReadMovements) => ({ legs, counters });

describe('reading movements', () => {
  it('finds again every leg that was truly flown, and nothing for a person to do', () => {
    fc.assert(
      fc.property(history, ({ legs, sent }) => {
        const read = readMovements(sent);
        const expected = legs.map(({ how, off, taxi, air, taxiIn, from, to, flight }) => ({
          flight,
          from,
          to,
          ending: how,
          offBlockAt: instant(off),
          blockMinutes: how === 'ramp' ? taxi : taxi + air + taxiIn,
          flightMinutes: how === 'ramp' ? 0 : air,
          cycles: how === 'ramp' ? 0 : 1,
          missing: [],
        }));
        expect(read.legs).toMatchObject(expected);
        expect(read.legs).toHaveLength(expected.length);
        expect(read.tray).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });

  it('gives the same legs and counters for any order and any number of deliveries', () => {
    const garbled = fc.array(
      fc.record({
        cor: fc.constantFrom('', 'COR '),
        flight: fc.constantFrom('ZZ100', 'ZZ101'),
        day: fc.constantFrom('20', '21', '22'),
        registration: fc.constantFrom('QABAX', 'QABBX'),
        station: fc.constantFrom('QXA', 'QXB'),
        what: fc.constantFrom('AD', 'AA', 'FR', 'RR', 'DIV', 'AD/'),
        minutes: fc.tuple(fc.integer({ min: 0, max: 2879 }), fc.integer({ min: 0, max: 90 })),
        sixDigits: fc.boolean(),
        late: fc.integer({ min: 0, max: 3000 }),
      }),
      { maxLength: 14 },
    );
    const sets = fc.tuple(garbled, fc.boolean()).map(([all, atOnce]) => {
      const sent = all.map(transmissionOf);
      return atOnce ? sent.map(({ text }) => ({ text, receivedAt: instant(2400) })) : sent;
    });
    fc.assert(
      fc.property(sets, fc.infiniteStream(fc.nat()), (sent, dice) => {
        const twice = [...sent, ...sent.filter(() => Number(dice.next().value) % 2 === 0)];
        const shuffled = twice
          .map((one) => ({ one, key: Number(dice.next().value) }))
          .sort((a, b) => a.key - b.key)
          .map(({ one }) => one);
        expect(essence(readMovements(shuffled))).toEqual(essence(readMovements(sent)));
      }),
      { numRuns: 200 },
    );
  });

  it('gives the same again when a message is delivered a second time, later', () => {
    fc.assert(
      fc.property(history, fc.nat(), fc.integer({ min: 1, max: 600 }), ({ sent }, which, later) => {
        const one = sent[which % sent.length] as Transmission;
        const again = {
          text: one.text,
          receivedAt: new Date(Date.parse(one.receivedAt) + later * 60_000).toISOString(),
        };
        expect(essence(readMovements([...sent, again]))).toEqual(essence(readMovements(sent)));
      }),
      { numRuns: 100 },
    );
  });

  it('never throws on any text, and loses no line of it', () => {
    const piece = fc.oneof(
      fc.constantFrom(
        'MVT',
        'COR MVT',
        'DIV',
        'ZZ200/21.QABAX.QXA',
        'AD1100/1115',
        'AA',
        'SI',
        '\n',
        '\r',
        '\u0003',
        ' ',
      ),
      fc.constantFrom(
        'EA1500',
        'QXB',
        'FLD31',
        'RR2400',
        'FR/1235',
        'RECEIVED 2026-01-21T12:00:00Z',
        'RECEIVED x',
        '/',
      ),
      fc.string({ unit: 'binary', maxLength: 12 }),
    );
    const text = fc
      .array(fc.tuple(piece, fc.constantFrom('', '\n', ' ')), { maxLength: 40 })
      .map((all) => all.flat().join(''));
    fc.assert(
      fc.property(text, (received) => {
        const { messages, tray } = readMovements(received, { receivedAt: '2026-01-21T12:00:00Z' });
        const kept = [...messages, ...tray].map((one) => one.text).join('\n');
        for (const line of linesOf(received)) expect(kept).toContain(line);
      }),
      { numRuns: 200 },
    );
  });

  it('puts a text that holds no message into the tray and makes no leg of it', () => {
    const garbage = fc.string({ unit: 'grapheme', minLength: 1 }).filter((text) => linesOf(text).length > 0);
    fc.assert(
      fc.property(garbage, (received) => {
        const { messages, events, legs, tray } = readMovements(received, { receivedAt: '2026-01-21T12:00:00Z' });
        expect({ messages, events, legs }).toEqual({ messages: [], events: [], legs: [] });
        expect(tray.length).toBeGreaterThan(0);
      }),
    );
  });

  it('reads every time of the day and nothing else as a time', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 9999 }), (number) => {
        const group = String(number).padStart(4, '0');
        const text = `MVT\nZZ200/21.QABAX.QXA\nAD21${group}`;
        const { legs, tray } = readMovements(text, { receivedAt: '2026-01-22T00:30:00Z' });
        const real = (number % 100 < 60 && number < 2400) || number === 2400;
        expect([legs.length, tray.length]).toEqual(real ? [1, 0] : [0, 1]);
      }),
      { numRuns: 300 },
    );
  });
});

/** The lines that a reader sees: without control characters, envelopes and blanks at the ends. */
function linesOf(text: string): string[] {
  return text
    .replace(/\u0001[^\u0001\u0002\u0003]*\u0002/g, '\n')
    .split(/[\n\r\u0003]/)
    .map((line) => line.replace(/\p{Cc}/gu, '').trim())
    .filter((line) => line !== '' && line !== 'RECEIVED 2026-01-21T12:00:00Z');
}

interface Garbled {
  cor: string;
  flight: string;
  day: string;
  registration: string;
  station: string;
  what: string;
  minutes: [number, number];
  sixDigits: boolean;
  late: number;
}

function transmissionOf({
  cor,
  flight,
  day: dd,
  registration,
  station,
  what,
  minutes,
  sixDigits,
  late,
}: Garbled): Transmission {
  const [first, second] = [minutes[0], minutes[0] + minutes[1]];
  const group = (minute: number) => (sixDigits ? day(minute) : '') + clock(minute);
  const pair = `${group(first)}/${group(second)}`;
  const lines: Record<string, string> = {
    AD: `AD${pair} EA${clock(second + 90)} QXB`,
    'AD/': `AD/${group(second)}`,
    AA: `AA${pair}`,
    FR: `FR${pair}`,
    RR: `AD${group(first)} RR${group(second)}`,
    DIV: `EA${clock(second)} QXC\nDR71`,
  };
  const type = what === 'DIV' ? 'DIV' : 'MVT';
  const text = `${cor}${type}\n${flight}/${dd}.${registration}.${station}\n${lines[what]}`;
  return { text, receivedAt: instant(second + late) };
}
