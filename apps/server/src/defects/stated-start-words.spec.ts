import { expect, it } from 'vitest';
import { startAsked, startWords } from './stated-start-words.js';

const COUNTER = { counter: 24630, reading: 24700, readAt: '2026-05-14T11:40:00+02:00', document: 'EO 12' };

it('a stated start is said with its document, and reads the same where the statement is asked for', () => {
  expect(startWords({ at: '2026-05-14T06:30:00Z', document: 'report 7' })).toBe(
    'Use counts from 2026-05-14 06:30 UTC, as report 7 states.',
  );
  const said =
    'Use counts from 24630 (if it counts hours: 410 h 30 min) on its counter, which read 24700 (if it counts hours: 411 h 40 min) at 2026-05-14 09:40 UTC, as EO 12 states.';
  expect(startWords(COUNTER)).toBe(said);
  const asked = { startCounter: '24630', startReading: '24700', startReadAt: COUNTER.readAt, startDocument: 'EO 12' };
  expect(startAsked({ act: 'defer', ...asked })).toEqual({ start: said });
  expect(startAsked({ act: 'defer' })).toEqual({});
});
