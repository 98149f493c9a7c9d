import { describe, expect, it } from 'vitest';
import { reason, Refusal } from './refusal.js';
import { REFUSALS, type RefusalCode } from './refusals.js';

const CODES = Object.keys(REFUSALS) as RefusalCode[];

describe('the catalogue of refusals', () => {
  it.each(CODES)('says for %s what is refused, what to do next and where the rule stands', (code) => {
    const { sentence, next, paragraph } = REFUSALS[code];
    expect(code).toMatch(/^[a-z]+(-[a-z]+)*$/);
    expect(sentence).toMatch(/[.}]$/);
    expect(next).toMatch(/[.}]$/);
    expect(paragraph).not.toBe('');
  });

  it('never calls a closed defect cleared, nor an answer go or no-go', () => {
    const words = CODES.map((code) => `${REFUSALS[code].sentence} ${REFUSALS[code].next}`).join(' ');
    expect(words).not.toMatch(/\bclear(ed)?\b|no-go/i);
  });

  it('fills the sentence and what to do next from the facts, lists joined', () => {
    const refusal = new Refusal('still-left-on-the-aircraft', {
      defect: 'D7',
      things: ['breaker at P11-C4 (collar 22)', 'placard at P5 (P-9)'],
    });
    expect(refusal.message).toBe(
      'Still left on the aircraft under defect D7: breaker at P11-C4 (collar 22); placard at P5 (P-9).',
    );
    expect(refusal.next).toContain('breaker at P11-C4 (collar 22); placard at P5 (P-9)');
    expect(refusal).toMatchObject({ code: 'still-left-on-the-aircraft', name: 'Refusal' });
  });

  it('takes a missing fact for a bug and not for a refusal', () => {
    const facts = { defect: 'D7' } as { defect: string; closedAt: string; how: string };
    expect(() => new Refusal('already-closed', facts)).toThrow('The fact "closedAt" is missing');
  });

  it('gives the same words to an answer that is not thrown', () => {
    expect(reason('unanswered', { defect: 'D1' })).toEqual({
      code: 'unanswered',
      sentence: 'Write-up D1 is not answered.',
      next: REFUSALS.unanswered.next,
      paragraph: REFUSALS.unanswered.paragraph,
    });
  });
});
