import { describe, expect, it } from 'vitest';
import { actor, deferredAs, refusalOf, signed } from '../invented.fixture.js';
import type { Signature } from '../people.js';
import { admitOneOff } from './admit-one-off.js';

const NOW = '2026-03-01T12:00Z';

/** A one-off signature of `tech` for a defect. */
const oneOff = (defect: string, number = 'ONE-1'): Signature => {
  const issuedBy = actor('quality', { role: 'quality' });
  const scope = { number, oneOff: { defect, issuedBy, issuedAt: NOW, because: 'nobody else at the station' } };
  return signed('tech', NOW, { scope });
};

describe('a one-off authorisation (145.A.30(j)(5), FROM MEMORY)', () => {
  it('stands for the job it was issued for', () => {
    expect(() => admitOneOff(oneOff('D1'), { defect: 'D1', acts: [] })).not.toThrow();
  });

  it('stands for no other job, and for nothing that is no job', () => {
    for (const job of [{ defect: 'D2', acts: [] }, null]) {
      expect(refusalOf(() => admitOneOff(oneOff('D1'), job)).code).toBe('one-off-for-another-job');
    }
  });

  it('stands for one signature, and the refusal says when it was used', () => {
    const { acts, defect } = deferredAs({}, '2026-03-01T10:00Z', { by: oneOff('D1'), at: NOW });
    const refusal = refusalOf(() => admitOneOff(oneOff('D1'), { defect, acts }));
    expect([refusal.code, refusal.facts.usedAt]).toEqual(['one-off-used', acts.at(-1)?.enteredAt]);
    expect(() => admitOneOff(oneOff('D1', 'ONE-2'), { defect, acts })).not.toThrow();
  });

  it('leaves a standing authorisation alone, however often it was used', () => {
    const { acts, defect } = deferredAs({}, '2026-03-01T10:00Z');
    expect(() => admitOneOff(signed('tech', NOW), { defect, acts })).not.toThrow();
  });
});
