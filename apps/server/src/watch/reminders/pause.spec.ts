import { describe, expect, it } from 'vitest';
import { pauseAfter, retryAfterSeconds } from './pause.js';

describe('the pause before a reminder is tried again', () => {
  it('doubles each time, and stops growing at six hours', () => {
    const pauses = [1, 2, 3, 4, 9, 10, 40, 400].map((attempts) => pauseAfter(attempts, 60, null));
    expect(pauses).toEqual([60, 120, 240, 480, 15_360, 21_600, 21_600, 21_600]);
  });

  it('is never shorter than the receiver asked for, up to a day', () => {
    expect(pauseAfter(1, 60, 600)).toBe(600);
    expect(pauseAfter(5, 60, 10)).toBe(960);
    expect(pauseAfter(1, 60, 999_999_999)).toBe(86_400);
  });

  it('is read from retry-after as seconds or as an instant (RFC 9110 10.2.3, its own examples, SEEN)', () => {
    expect(retryAfterSeconds('120', '1999-12-31T23:00:00Z')).toBe(120);
    expect(retryAfterSeconds('Fri, 31 Dec 1999 23:59:59 GMT', '1999-12-31T23:58:00Z')).toBe(119);
    expect(retryAfterSeconds('Fri, 31 Dec 1999 23:59:59 GMT', '2026-01-01T00:00:00Z')).toBe(0);
    for (const header of [undefined, '', 'soon', '-5', '1e9', '2026-01-01']) {
      expect(retryAfterSeconds(header, '2026-01-01T00:00:00Z')).toBeNull();
    }
  });
});
