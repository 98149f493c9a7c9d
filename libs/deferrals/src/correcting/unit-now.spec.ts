/** What was swapped stays swapped, whatever is corrected of the basis afterwards. M.A.403(c); 145.A.48. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { changeRow } from '../deferring/change-row.js';
import { defer } from '../deferring/defer.js';
import { transfer } from '../deferring/transfer.js';
import type { DefectLife } from '../defect-life.js';
import { context, identifiedAs, offer, refusalOf, writtenUp } from '../invented.fixture.js';
import { Refusal } from '../refusal.js';
import { proceed } from '../replay.js';
import { identify } from '../writing-up/identify.js';
import { askCorrection, lookAndCorrect } from './ask-correction.js';
import { correct } from './correct.js';
import { asked, at, given, RECORDED, second, tech } from './corrections.fixture.js';
import { readsNow } from './reads-now.js';

const INSTALLED = ['1', '2', '3', '4', '5', '6'];
const offered = offer({ covers: INSTALLED });
const unit = { offered, installed: INSTALLED, others: [] };
const basis = { kind: 'mel-row' as const, row: '1' };
const under = context(RECORDED, { offered });

/** Units deferred, and the row changed by act N. */
const changed = (units: string[]): DefectLife => {
  const open = identifiedAs(writtenUp(RECORDED), units);
  const life = proceed(open, defer(open, { id: 'deferred', by: { ...tech, signedAt: RECORDED }, basis }, under));
  const change = { id: 'N', by: tech, basis, reason: 'othre relief' };
  return proceed(life, changeRow(life, change, context(at, { offered })));
};

const swapped = (life: DefectLife, fromUnit: string, toUnit: string): DefectLife => {
  const said = { id: `swap-${life.acts.length}`, by: tech, parts: [], reason: 'to compare', moved: [], others: [] };
  return proceed(life, transfer(life, { ...said, fromUnit, toUnit, installed: INSTALLED }, given));
};

const reasonPut = (life: DefectLife, now: string): DefectLife =>
  proceed(life, correct(life, asked(life, { id: `c-${life.acts.length}`, act: 'N', field: 'reason', now }), given));

const unitPut = (life: DefectLife, part: number, now: string, others: readonly DefectLife[] = []): DefectLife => {
  const id = `c-${life.acts.length}`;
  const offers = { ...unit, others };
  const command = asked(life, { id, act: 'N', field: 'unit', part, now, unit: offers });
  const waits = proceed(life, askCorrection(life, command, given));
  const look = { id: `l-${life.acts.length}`, asked: id, secondLook: second, unit: offers };
  return proceed(waits, lookAndCorrect(waits, look, given));
};

describe('a part that was moved after the row was signed', () => {
  it('stays where it is when a word of that act is corrected', () => {
    const moved = swapped(changed(['1']), '1', '2');
    expect(moved.item?.units).toEqual(['2']);
    const corrected = reasonPut(moved, 'other relief');
    expect(corrected.item?.units).toEqual(['2']);
    expect(readsNow(corrected, { act: 'N', field: 'reason', item: null })).toBe('other relief');
  });

  it('stays where it is when the other unit of that act is corrected', () => {
    const moved = swapped(changed(['1', '2']), '1', '3');
    expect(unitPut(moved, 1, '4').item?.units).toEqual(['3', '4']);
  });

  it('is not put back by a correction of its own unit: what to do instead is said', () => {
    const moved = swapped(changed(['1', '2']), '1', '3');
    const refusal = refusalOf(() => unitPut(moved, 0, '4'), 'unit-moved-since');
    expect(refusal.message).toContain('Unit 1');
    expect(refusalOf(() => unitPut(moved, 1, '3')).code).toBe('swap-among-failed');
  });

  it('is not another unit that stands where it was', () => {
    const turned = swapped(swapped(changed(['1', '2']), '2', '3'), '1', '2');
    expect(turned.item?.units).toEqual(['2', '3']);
    expect(refusalOf(() => unitPut(turned, 1, '4')).code).toBe('unit-moved-since');
  });

  it('counts among the units that are asked of the other items', () => {
    const moved = swapped(changed(['1', '2']), '1', '3');
    const other = identifiedAs(writtenUp(RECORDED, { defect: 'D2' }), ['2']);
    const down = proceed(other, defer(other, { id: 'D2-d', by: { ...tech, signedAt: RECORDED }, basis }, under));
    const where = { ...down, item: { entry: '22-10-01', subEntry: 'all', units: ['3'] } };
    expect(refusalOf(() => unitPut(moved, 1, '4', [where])).code).toBe('unit-may-be-deferred-already');
  });
});

it('a unit that was ruled out is corrected no more, and the one that is left is', () => {
  const life = changed(['1', '2']);
  const item = { entry: '22-10-01', subEntry: 'all', units: ['2'] };
  const narrowed = proceed(life, identify(life, { id: 'i', by: tech, item, installed: INSTALLED }, given));
  expect(refusalOf(() => unitPut(narrowed, 0, '3')).code).toBe('unit-moved-since');
  expect(unitPut(narrowed, 1, '3').item?.units).toEqual(['3']);
  expect(reasonPut(narrowed, 'other relief').item?.units).toEqual(['2']);
});

/** The second account: where each part is, and whether it was moved since it was written down. */
type Account = { where: string; moved: boolean }[];
type Step = { kind: 'swap' | 'unit' | 'reason'; part: number; to: string };

const step: fc.Arbitrary<Step> = fc.record({
  kind: fc.constantFrom('swap' as const, 'unit' as const, 'reason' as const),
  part: fc.nat(1),
  to: fc.constantFrom(...INSTALLED),
});

function taken(life: DefectLife, { kind, part, to }: Step, account: Account): DefectLife {
  if (kind === 'reason') return reasonPut(life, `${life.acts.length}`);
  if (kind === 'swap') return swapped(life, account[part]?.where ?? '', to);
  return unitPut(life, part, to);
}

it('after any swaps and corrections each part is where a list of parts says', () => {
  let [admitted, refused] = [0, 0];
  fc.assert(
    fc.property(fc.array(step, { maxLength: 12 }), (steps) => {
      let life = changed(['1', '2']);
      const account: Account = ['1', '2'].map((where) => ({ where, moved: false }));
      for (const one of steps) {
        const own = account[one.part];
        if (own === undefined) throw new Error('two parts');
        try {
          life = taken(life, one, account);
        } catch (error) {
          if (!(error instanceof Refusal)) throw error;
          refused += 1;
          const isNamed = account.some(({ where }) => where === one.to);
          const known = [own.moved, isNamed, readsOf(life).includes(one.to)].some(Boolean);
          expect([one.kind, error.code, known]).toEqual([one.kind, error.code, true]);
          continue;
        }
        if (one.kind === 'unit') expect(own.moved).toBe(false);
        if (one.kind !== 'reason') own.where = one.to;
        if (one.kind === 'swap') own.moved = true;
        admitted += 1;
        expect(life.item?.units).toEqual(account.map(({ where }) => where));
      }
    }),
    { numRuns: 150 },
  );
  expect(Math.min(admitted, refused)).toBeGreaterThan(100);
});

/** What the act says of its units, corrections applied. */
function readsOf({ acts }: DefectLife): string[] {
  return acts.reduce<string[]>(
    (units, act) => (act.kind === 'corrected' && act.field === 'unit' ? units.with(act.part ?? 0, act.now) : units),
    ['1', '2'],
  );
}
