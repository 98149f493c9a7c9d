import { describe, expect, it } from 'vitest';
import type { Act } from './acts.js';
import { context, deferredAs, refusalOf, signed, writtenUp } from './invented.fixture.js';
import { raiseInError } from './answering/raise-in-error.js';
import { correct } from './correcting/correct.js';
import { rectify } from './rectifying/rectify.js';
import { lifeAsKnownAt, proceed, replay } from './replay.js';
import { stateOf } from './standing.js';

const at = '2026-01-27T10:00Z';
const life = deferredAs({}, '2026-01-26T10:00Z');
const [written, identified, deferred] = life.acts as [Act, Act, Act];

describe('a life rebuilt from its acts', () => {
  it('is the same life', () => {
    expect(replay(life.acts)).toEqual(life);
    expect(replay(JSON.parse(JSON.stringify(life.acts)) as Act[])).toEqual(life);
  });

  it('needs a write-up, and needs it first', () => {
    expect(refusalOf(() => replay([])).code).toBe('not-written-up');
    expect(refusalOf(() => replay([identified, written])).code).toBe('not-written-up');
  });

  it('is refused out of order, twice, or mixed with another defect', () => {
    const work = { id: 'w', by: signed('tech', at), workDone: 'opened', reference: 'AMM', complete: false };
    const [later] = rectify(life, work, context(at));
    expect(refusalOf(() => replay([written, later as Act, identified, deferred])).code).toBe('history-out-of-order');
    expect(refusalOf(() => replay([...life.acts, deferred])).code).toBe('act-entered-twice');
    expect(refusalOf(() => replay([...life.acts, { ...(later as Act), defect: 'D2' }])).code).toBe(
      'act-of-another-defect',
    );
  });

  it('has nothing after its end but corrections', () => {
    const alone = writtenUp('2026-01-26T10:00Z');
    const by = signed('tech', at);
    const closed = proceed(alone, raiseInError(alone, { id: 'x', by, reason: 'wrong aircraft' }, context(at)));
    const refusal = refusalOf(() => replay([...closed.acts, { ...identified, enteredAt: at }]), 'already-closed');
    expect(refusal.facts).toMatchObject({ how: 'raised in error', closedAt: at });
    const { description: was } = closed;
    const word = {
      id: 'c',
      by,
      act: 'D1-written-up',
      field: 'description' as const,
      was,
      now: 'other',
      reason: 'typing',
    };
    expect(stateOf(proceed(closed, correct(closed, word, context(at))))).toBe('closed');
  });

  it('takes an act of a kind that it does not know for a bug', () => {
    const unknown = { ...identified, id: 'u', kind: 'constructor' } as unknown as Act;
    expect(() => replay([written, unknown])).toThrow('No rule is known for acts of kind constructor');
  });

  it('shows what was known at an instant', () => {
    const signedLater = deferredAs({}, '2026-01-26T10:00Z', { at });
    expect(stateOf(lifeAsKnownAt(signedLater.acts, '2026-01-27T09:59Z'))).toBe('unanswered');
    expect(stateOf(lifeAsKnownAt(signedLater.acts, at))).toBe('open under deferral');
    expect(refusalOf(() => lifeAsKnownAt(life.acts, '2026-01-26T09:59Z')).code).toBe('not-written-up');
  });
});
