import fc from 'fast-check';
import { expect, it } from 'vitest';
import { hoursText, minutesIn } from './hours.js';

it('hours and minutes read back as the minutes they were written from', () => {
  fc.assert(fc.property(fc.nat(36_000_000), (minutes) => minutesIn(hoursText(minutes)) === minutes));
});

it('what is no hours and minutes is not read', () => {
  expect(['', '4', '4.5', '4:60', '-4:20', '4:2'].map(minutesIn)).toEqual([null, null, null, null, null, null]);
  expect([hoursText(260), hoursText(-25), minutesIn(' 4:20 ')]).toEqual(['4:20', '-0:25', 260]);
});
