import { describe, expect, it } from 'vitest';
import { defer } from '../deferring/defer.js';
import type { DefectLife } from '../defect-life.js';
import { context, deferredAs, identifiedAs, offer, refusalOf, signed, writtenUp } from '../invented.fixture.js';
import { proceed } from '../replay.js';
import { deadlineOf } from '../signed-limit.js';
import { stateOf } from '../standing.js';
import { join } from './join.js';

const at = '2026-01-28T10:00Z';
const by = signed('tech', at);
const first = deferredAs({}, '2026-01-26T10:00Z');
const again = (units: string[], recordedAt = '2026-01-27T10:00Z', entry = '22-10-01'): DefectLife =>
  identifiedAs(writtenUp(recordedAt, { defect: 'D2' }), units, entry);
const deferAgain = (life: DefectLife, others = [first]) =>
  defer(
    life,
    { id: 'd2', by, basis: { kind: 'mel-row', row: '1' } },
    context(at, { others, offered: offer({ id: '1' }) }),
  );
const joined = (life: DefectLife, other = first) =>
  join(life, other, { id: 'j', entryId: 'e', by, sheet: '204', reason: 'same unit again' }, context(at));

describe('a unit that is written up a second time', () => {
  it('is not deferred twice: the refusal names the open item and what to do', () => {
    const refusal = refusalOf(() => deferAgain(again(['1'])), 'unit-deferred-already');
    expect(refusal.facts).toMatchObject({ other: 'D1' });
    expect(refusal.next).toContain('Add this write-up to D1');
  });

  it('is asked which one, where it may be the same', () => {
    expect(refusalOf(() => deferAgain(again(['1', '2']))).code).toBe('unit-may-be-deferred-already');
  });

  it('is another defect when it is another unit, another item, or the first one is closed', () => {
    expect(deferAgain(again(['2']))).toHaveLength(1);
    const closing = { how: 'rectified and released' as const, at, by };
    expect(deferAgain(again(['1']), [{ ...first, closed: closing }])).toHaveLength(1);
    expect(deferAgain(again(['1']), [writtenUp('2026-01-26T10:00Z')])).toHaveLength(1);
  });

  it('goes on as another entry of the open item, whose clock stays', () => {
    const second = again(['1']);
    const { joins, entered } = joined(second);
    const [ended, other] = [proceed(second, joins), proceed(first, entered)];
    expect([stateOf(ended), ended.closed?.how]).toEqual(['closed', 'joined to another']);
    expect([other.sheet, deadlineOf(other.limits)]).toEqual(['204', deadlineOf(first.limits)]);
    expect(other.recordedAt).toBe(first.recordedAt);
  });

  it('is not joined to itself, open under deferral or not', () => {
    const command = { id: 'j', entryId: 'e', by, sheet: '204', reason: 'the same' };
    for (const life of [first, again(['1'])]) {
      expect(refusalOf(() => join(life, life, command, context(at))).code).toBe('joined-to-itself');
    }
  });

  it('is not joined to another unit, nor where that would lose a day', () => {
    expect(refusalOf(() => joined(again(['2']))).code).toBe('not-the-same-unit');
    expect(refusalOf(() => joined(again(['1'], '2026-01-25T10:00Z'))).code).toBe('joined-was-earlier');
  });
});
