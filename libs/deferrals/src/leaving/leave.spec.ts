import { describe, expect, it } from 'vitest';
import type { LeftItem } from '../acts.js';
import { actor, context, deferredAs, refusalOf, signed } from '../invented.fixture.js';
import { proceed } from '../replay.js';
import { fitPlacard, placardsFitted } from './fit-placard.js';
import { leaveOnAircraft } from './leave.js';
import { removePlacard } from './remove-placard.js';
import { undoLeft } from './undo.js';

const at = '2026-01-27T10:00Z';
const given = context(at);
const by = signed('tech', at);
const life = deferredAs({}, '2026-01-26T10:00Z');
const breaker: LeftItem = { id: 'b1', kind: 'breaker', where: 'P11-C4', tag: 'collar 22', undo: 'push in' };
const withBreaker = proceed(life, leaveOnAircraft(life, { id: 'l1', by, items: [breaker] }, given));
const placard = { id: 'p1', by: actor('crew', { role: 'commander' }), text: 'AP 1 INOP', position: 'P5', tag: 'P-9' };
const withBoth = proceed(withBreaker, fitPlacard(withBreaker, placard, given));

describe('what is left on the aircraft', () => {
  it('is counted out with its place and tag, and counted in again', () => {
    expect(withBoth.left.map(({ id }) => id)).toEqual(['b1', 'p1']);
    const undone = proceed(withBoth, undoLeft(withBoth, { id: 'u1', by, items: ['b1'] }, given));
    expect(undone.left.map(({ id }) => id)).toEqual(['p1']);
    const removed = proceed(undone, removePlacard(undone, { id: 'u2', by, item: 'p1' }, given));
    expect(removed.left).toEqual([]);
  });

  it.each(['id', 'where', 'tag', 'undo'] as const)('is refused without its %s', (field) => {
    expect(
      refusalOf(() => leaveOnAircraft(life, { id: 'l', by, items: [{ ...breaker, [field]: ' ' }] }, given)).code,
    ).toBe('text-missing');
  });

  it('is not counted out twice, in one act or in two', () => {
    const twice = refusalOf(() => leaveOnAircraft(withBreaker, { id: 'l2', by, items: [breaker] }, given));
    expect([twice.code, twice.message]).toEqual([
      'left-item-known',
      'breaker at P11-C4 (collar 22) is left on the aircraft under this defect already.',
    ]);
    expect(refusalOf(() => leaveOnAircraft(life, { id: 'l2', by, items: [breaker, breaker] }, given)).code).toBe(
      'left-item-known',
    );
  });

  it('is not counted in when it was never out, and the refusal names what is', () => {
    const refusal = refusalOf(
      () => undoLeft(withBoth, { id: 'u', by, items: ['b1', 'x'] }, given),
      'left-item-unknown',
    );
    expect(refusal.message).toContain('breaker at P11-C4 (collar 22); placard at P5 (P-9)');
    expect(refusalOf(() => removePlacard(withBoth, { id: 'u', by, item: 'b1' }, given)).code).toBe(
      'left-item-unknown',
    );
    expect(refusalOf(() => undoLeft(life, { id: 'u', by, items: ['b1'] }, given)).code).toBe('left-item-unknown');
  });

  it('is undone only with a signature', () => {
    const nobody = signed('crew', at, { scope: { privileges: [] } });
    expect(refusalOf(() => undoLeft(withBoth, { id: 'u', by: nobody, items: ['b1'] }, given)).code).toBe(
      'authorisation-does-not-cover',
    );
  });

  it('shows the placards that are fitted now', () => {
    expect(placardsFitted(withBoth)).toEqual(['AP 1 INOP']);
    const removed = proceed(withBoth, removePlacard(withBoth, { id: 'u', by, item: 'p1' }, given));
    expect(placardsFitted(removed)).toEqual([]);
    expect(refusalOf(() => fitPlacard(life, { ...placard, text: '' }, given)).code).toBe('text-missing');
  });
});
