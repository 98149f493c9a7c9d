import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { countUsed, mayDepart, rectificationWindow, whatIsLeft, type Leg } from './index.js';

const clockOf = (interval: string, engine?: string) =>
  rectificationWindow({
    category: 'A',
    interval,
    recordedAt: '2026-06-01T06:00Z',
    base: 'UTC',
    tzdb: '2025c',
    ...(engine === undefined ? {} : { engine }),
  });

interface Drawn {
  minutes: number;
  own: Record<string, { minutes: number; cycles: number }>;
}

const someUse = fc.record({ minutes: fc.integer({ min: 0, max: 400 }), cycles: fc.nat(2) });
const someLegs = fc.array(
  fc.record({
    minutes: fc.integer({ min: 30, max: 300 }),
    own: fc.dictionary(fc.constantFrom('1', '2'), someUse, { maxKeys: 2 }),
  }),
  { maxLength: 8 },
);

const legs = (drawn: readonly Drawn[]): Leg[] =>
  drawn.map(({ minutes, own }, index) => ({
    offBlockAt: new Date(Date.UTC(2026, 5, 1, 7 + index * 8)).toISOString(),
    blockMinutes: minutes + 10,
    flightMinutes: minutes,
    cycles: 1,
    landings: 1,
    engines: own,
  }));

const recount = (drawn: readonly Drawn[], position: string) =>
  drawn.reduce(
    (sum, { minutes, own }) => {
      const use = Object.hasOwn(own, position) ? own[position] : undefined;
      return { minutes: sum.minutes + (use?.minutes ?? minutes), cycles: sum.cycles + (use?.cycles ?? 1) };
    },
    { minutes: 0, cycles: 0 },
  );

describe('what an engine used', () => {
  it('is its own minutes and cycles where a leg tells them, and those of the leg where it does not', () => {
    fc.assert(
      fc.property(someLegs, fc.constantFrom('1', '2'), (drawn, position) => {
        const { minutes, cycles } = recount(drawn, position);
        const used = countUsed(clockOf('500 engine-hours or 90 engine-cycles', position), legs(drawn));
        expect(used).toMatchObject({ engineMinutes: minutes, engineCycles: cycles });
      }),
    );
  });

  it('is never less than that of any engine where the interval names none', () => {
    fc.assert(
      fc.property(someLegs, (drawn) => {
        const used = countUsed(clockOf('500 engine-hours or 90 engine-cycles'), legs(drawn));
        for (const position of ['1', '2', '3']) {
          const { minutes, cycles } = recount(drawn, position);
          expect(used.engineMinutes).toBeGreaterThanOrEqual(minutes);
          expect(used.engineCycles).toBeGreaterThanOrEqual(cycles);
        }
      }),
    );
  });

  it('belongs to a clock only where its interval asks for an engine', () => {
    expect(clockOf('9 engine-cycles', '2')).toMatchObject({ engine: '2' });
    expect(clockOf('9 flights', '2')).not.toHaveProperty('engine');
  });

  it('does not mix with that of the aircraft', () => {
    const drawn = [{ minutes: 60, own: { '2': { minutes: 75, cycles: 2 } } }];
    expect(countUsed(clockOf('9 engine-cycles', '2'), legs(drawn))).toMatchObject({ cycles: 1, engineCycles: 2 });
    expect(countUsed(clockOf('9 cycles'), legs(drawn))).not.toHaveProperty('engineCycles');
  });

  it('is held against the limit with the planned flight, and is not known without its counter', () => {
    const flight = { offBlockAt: '2026-06-03T08:00Z', flightMinutes: 60 };
    const hours = clockOf('10 engine-hours', '1');
    expect(mayDepart(hours, flight, { engineMinutes: 540 }).answer).toBe('holds');
    expect(mayDepart(hours, { ...flight, engineMinutes: 61 }, { engineMinutes: 540 }).answer).toBe('fails');
    expect(mayDepart(hours, flight, { flightMinutes: 0 }).answer).toBe('unknown');
    const cycles = clockOf('3 engine-cycles', '1');
    expect(mayDepart(cycles, { ...flight, engineCycles: 2 }, { engineCycles: 2 }).answer).toBe('fails');
    expect(mayDepart(cycles, flight, { engineCycles: 2 }).answer).toBe('holds');
    expect(whatIsLeft(hours, '2026-06-03T08:00Z', { engineMinutes: 540 }).sentence).toBe(
      '1 h of 10 h of the engine left.',
    );
    expect(whatIsLeft(cycles, '2026-06-03T08:00Z', {}).isOver).toBe(null);
  });
});
