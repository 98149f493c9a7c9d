import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Condition, ConditionLeaf } from '../content.js';
import { loadMel } from '../load-mel.js';
import { spoilt } from '../valid-mel.fixture.js';

const WHEN = '/entries/0/subEntries/0/rows/0/provisos/0/when';
const steering = { entry: '32-51-01' };
const work = { work: '32-42-01/1/M1' };
const judgement = { judgement: '32-42-01/1/J1' };

const reasonsFor = (when: unknown): string[] => {
  const loaded = loadMel(spoilt(WHEN, when), 'test.yaml');
  return 'errors' in loaded ? loaded.errors.map(({ reason }) => reason) : [];
};

const up = (value: number, operator = 'greaterThanInclusive') => ({
  fact: 'entry.up',
  operator,
  value,
  params: steering,
});
const done = { fact: 'work.done', operator: 'equal', value: true, params: work };
const accepted = { fact: 'judgement.accepted', operator: 'equal', value: true, params: judgement };

describe('polarity', () => {
  it.each([
    ['at least two up', up(2)],
    ['work done', done],
    ['a judgement accepted', accepted],
    ['the placard in place', { ...done, params: { work: '32-42-01/1/placard' } }],
    ['the combination accepted', { ...accepted, params: { judgement: 'combination' } }],
    ['work done under two nots', { not: { not: done } }],
    ['a fact of the flight under one not', { not: { fact: 'flight.rvsm', operator: 'equal', value: true } }],
    ['none failed', { ...up(2), fact: 'entry.notFailed' }],
  ])('allows %s', (_, when) => {
    expect(reasonsFor(when)).toEqual([]);
  });

  it.each([
    ['at least two up under a not', { not: up(2) }, /odd number of "not"/],
    ['work done under a not', { all: [{ not: { any: [done] } }] }, /odd number of "not"/],
    ['a judgement under three nots', { not: { not: { not: accepted } } }, /odd number of "not"/],
    ['work not done', { ...done, value: false }, /only be asked as "equal true"/],
    ['work not equal to done', { ...done, operator: 'notEqual' }, /only be asked as "equal true"/],
    ['a judgement declined', { ...accepted, value: false }, /only be asked as "equal true"/],
    ['work not done under a not', { not: { ...done, value: false } }, /odd number of "not"/],
    ['exactly two up', up(2, 'equal'), /greaterThanInclusive k/],
    ['fewer than two up', up(2, 'lessThan'), /greaterThanInclusive k/],
    ['more than one up', up(1, 'greaterThan'), /greaterThanInclusive k/],
    ['at least none up', up(0), /at least one whole unit/],
    ['at least one and a half up', up(1.5), /at least one whole unit/],
    ['more up than there are', up(3), /3 of 2 units/],
    ['more up than are named', { ...up(2), params: { ...steering, units: ['L'] } }, /2 of 1 units/],
  ])('refuses %s', (_, when, reason) => {
    const reasons = reasonsFor(when);
    expect(reasons).toHaveLength(1);
    expect(reasons[0]).toMatch(reason);
  });

  // The oracle knows nothing of nots: it evaluates the tree in a world and in a better one.
  const leaves: ConditionLeaf[] = [
    up(1) as ConditionLeaf,
    up(2) as ConditionLeaf,
    up(1, 'lessThan') as ConditionLeaf,
    done as ConditionLeaf,
    { ...done, value: false } as ConditionLeaf,
    accepted as ConditionLeaf,
    { fact: 'flight.rvsm', operator: 'equal', value: true },
  ];
  const trees = fc.letrec<{ tree: Condition }>((tie) => ({
    tree: fc.oneof(
      { maxDepth: 4, depthSize: 'small', withCrossShrink: true },
      fc.constantFrom(...leaves),
      fc.array(tie('tree'), { minLength: 1, maxLength: 3 }).map((all) => ({ all })),
      fc.array(tie('tree'), { minLength: 1, maxLength: 3 }).map((any) => ({ any })),
      tie('tree').map((not) => ({ not })),
    ),
  })).tree;

  interface World {
    up: number;
    done: boolean;
    accepted: boolean;
    rvsm: boolean;
  }

  const valueOf = (leaf: ConditionLeaf, world: World): boolean => {
    if (leaf.fact === 'entry.up') {
      return leaf.operator === 'lessThan' ? world.up < Number(leaf.value) : world.up >= Number(leaf.value);
    }
    if (leaf.fact === 'work.done') return world.done === leaf.value;
    return leaf.fact === 'flight.rvsm' ? world.rvsm : world.accepted;
  };

  const holds = (tree: Condition, world: World): boolean => {
    if ('all' in tree) return tree.all.every((child) => holds(child, world));
    if ('any' in tree) return tree.any.some((child) => holds(child, world));
    return 'not' in tree ? !holds(tree.not, world) : valueOf(tree, world);
  };

  it('lets nothing pass that more work, acceptance or operative units could make worse', () => {
    let passed = 0;
    const worlds = fc.record({
      up: fc.integer({ min: 0, max: 2 }),
      done: fc.boolean(),
      accepted: fc.boolean(),
      rvsm: fc.boolean(),
    });
    fc.assert(
      fc.property(trees, worlds, worlds, (tree, world, other) => {
        if (reasonsFor(tree).length > 0) return;
        passed += 1;
        const better = {
          up: Math.max(world.up, other.up),
          done: world.done || other.done,
          accepted: world.accepted || other.accepted,
          rvsm: world.rvsm,
        };
        expect(holds(tree, better) || !holds(tree, world)).toBe(true);
      }),
      { numRuns: 2000 },
    );
    expect(passed).toBeGreaterThan(200);
  });
});
