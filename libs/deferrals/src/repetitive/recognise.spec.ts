import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { recognise, type Before, type Likeness, type RepetitiveRule, type WrittenLike } from './recognise.js';

const now: WrittenLike = {
  entry: '22-10-01',
  subEntry: 'all',
  units: ['1'],
  system: '22',
  faultMessage: 'AP 1 FAULT',
};
const RULE: RepetitiveRule = {
  times: 3,
  within: { days: 10, flights: 15, flightMinutes: null },
  alikeBy: ['entry', 'position', 'system', 'message'],
};
const before = (defect: string, over: Partial<Before> = {}): Before => ({
  ...now,
  defect,
  how: 'rectified and released',
  ago: { days: 2, flights: 4, flightMinutes: 500 },
  ...over,
});

describe('a defect that comes back (check values of our own; no text gives numbers)', () => {
  it('is repetitive with the third write-up within ten days or fifteen flights', () => {
    const third = recognise(now, [before('D1'), before('D2')], RULE);
    expect(third).toMatchObject({ times: 3, repetitive: true });
    expect(recognise(now, [before('D1')], RULE)).toMatchObject({ times: 2, repetitive: false });
  });

  it.each([
    ['ten days', { days: 10, flights: 99, flightMinutes: null }, true],
    ['fifteen flights', { days: 99, flights: 15, flightMinutes: null }, true],
    ['neither', { days: 11, flights: 16, flightMinutes: null }, false],
  ])('counts at the very edge of a window: %s', (_, ago, counts) => {
    expect(recognise(now, [before('D1', { ago })], RULE).occurrences).toHaveLength(counts ? 1 : 0);
  });

  it('counts resets and no fault found, and neither errors nor the same item entered again', () => {
    const hows = ['no fault found', 'reset and watched', null, 'raised in error', 'joined to another'] as const;
    const found = recognise(
      now,
      hows.map((how, index) => before(`D${index}`, { how })),
      RULE,
    );
    expect(found.occurrences.map(({ defect }) => defect)).toEqual(['D0', 'D1', 'D2']);
  });

  it('holds for inside what nobody can count, and says that it is not certain', () => {
    const unknown = before('D1', { ago: { days: 30, flights: null, flightMinutes: null } });
    expect(recognise(now, [unknown], RULE).occurrences).toEqual([expect.objectContaining({ certain: false })]);
    expect(recognise(now, [unknown], { ...RULE, within: { ...RULE.within, flights: null } }).occurrences).toEqual([]);
  });

  it('tells by what they are alike', () => {
    const other = before('D1', { entry: '22-11-01', units: ['2'], faultMessage: ' ap 1  fault ' });
    expect(recognise(now, [other], RULE).occurrences[0]?.alikeBy).toEqual(['system', 'message']);
    const bare: WrittenLike = { entry: null, subEntry: null, units: [], system: null, faultMessage: null };
    expect(recognise(bare, [{ ...before('D1'), ...bare }], RULE).occurrences).toEqual([]);
    const otherUnit = before('D1', { units: ['2'], system: '99', faultMessage: null });
    expect(recognise(now, [otherUnit], { ...RULE, alikeBy: ['position'] }).occurrences).toEqual([]);
    const byEntry = before('D1', { system: null, faultMessage: null });
    expect(recognise(now, [byEntry], { ...RULE, alikeBy: ['system'] }).occurrences).toHaveLength(1);
  });
});

describe('against a naive recount', () => {
  const some = <T>(...of: T[]) => fc.constantFrom<T>(...of);
  const like = {
    entry: some('22-10-01', '22-11-01', '32-10-01', null),
    subEntry: fc.constant('all'),
    units: fc.subarray(['1', '2']),
    system: some('22', '32', null),
    faultMessage: some('AP FAULT', 'ap fault', '', null),
  };
  const counter = fc.option(fc.nat(20), { freq: 4 });
  const past: fc.Arbitrary<Before> = fc.record({
    ...like,
    defect: fc.uuid(),
    how: some(
      'rectified and released',
      'no fault found',
      'raised in error',
      'reset and watched',
      'joined to another',
      null,
    ),
    ago: fc.record({ days: fc.nat(20), flights: counter, flightMinutes: counter }),
  });
  const rules: fc.Arbitrary<RepetitiveRule> = fc.record({
    times: fc.integer({ min: 2, max: 4 }),
    within: fc.record({ days: counter, flights: counter, flightMinutes: counter }),
    alikeBy: fc.subarray<Likeness>(['entry', 'position', 'system', 'message']),
  });

  /** Word by word, one at a time, sharing nothing with the rule. */
  function naive(one: WrittenLike, all: readonly Before[], rule: RepetitiveRule): number {
    let count = 1;
    for (const old of all) {
      if (old.how === 'raised in error' || old.how === 'joined to another') continue;
      let alike = false;
      const entry = one.entry !== null && one.entry === old.entry;
      if (rule.alikeBy.includes('entry') && entry) alike = true;
      if (rule.alikeBy.includes('position') && entry && one.units.filter((u) => old.units.indexOf(u) >= 0).length > 0)
        alike = true;
      const chapter = (w: WrittenLike) => w.system ?? w.entry?.split('-')[0] ?? 'none';
      if (rule.alikeBy.includes('system') && chapter(one) !== 'none' && chapter(one) === chapter(old)) alike = true;
      const told = (one.faultMessage ?? '').toUpperCase();
      if (rule.alikeBy.includes('message') && told !== '' && told === (old.faultMessage ?? '').toUpperCase())
        alike = true;
      if (!alike) continue;
      const { days, flights, flightMinutes } = rule.within;
      let inside = days !== null && old.ago.days <= days;
      if (flights !== null && (old.ago.flights === null || old.ago.flights <= flights)) inside = true;
      if (flightMinutes !== null && (old.ago.flightMinutes === null || old.ago.flightMinutes <= flightMinutes))
        inside = true;
      if (inside) count += 1;
    }
    return count;
  }

  it('a write-up is repetitive exactly when as many are counted', () => {
    fc.assert(
      fc.property(fc.record(like), fc.array(past, { maxLength: 6 }), rules, (one, all, rule) => {
        const { times, repetitive } = recognise(one, all, rule);
        expect({ times, repetitive }).toEqual({
          times: naive(one, all, rule),
          repetitive: naive(one, all, rule) >= rule.times,
        });
      }),
      { numRuns: 2000 },
    );
  });

  it('one more write-up never makes it less so, and a longer window neither', () => {
    fc.assert(
      fc.property(fc.record(like), fc.array(past, { maxLength: 5 }), past, rules, (one, all, more, rule) => {
        const then = recognise(one, all, rule).times;
        expect(recognise(one, [...all, more], rule).times).toBeGreaterThanOrEqual(then);
        const longer = { ...rule.within, days: rule.within.days === null ? null : rule.within.days + 5 };
        expect(recognise(one, all, { ...rule, within: longer }).times).toBeGreaterThanOrEqual(then);
      }),
    );
  });
});
