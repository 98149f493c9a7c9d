import { describe, expect, it } from 'vitest';
import {
  dayAndTime,
  lastMinuteBefore,
  offsetMinutes,
  offsetText,
  sentWithOffset,
  utcBeside,
  withOffset,
} from './time.js';
import { meaningsOf } from './wall-time.js';

describe('an instant', () => {
  it('is read on a clock in a zone and sent with the offset of that moment', () => {
    expect(dayAndTime('2026-12-04T21:59:00Z', 'Europe/Athens')).toBe('4 Dec 2026 23:59');
    expect(sentWithOffset('2026-10-24T21:40:59.999Z', 'Europe/Paris')).toBe('2026-10-24T23:40+02:00');
    expect(withOffset('2026-10-25T01:20:00Z', 'Europe/Paris')).toBe('25 Oct 2026 02:20 (UTC+01:00)');
  });

  it('names the day in UTC only where it is another one', () => {
    expect(utcBeside('2026-10-24T21:40:00Z', 'Europe/Paris')).toBe('21:40 UTC');
    expect(utcBeside('2026-10-24T22:10:00Z', 'Europe/Paris')).toBe('24 Oct 2026 22:10 UTC');
  });

  it('has offsets of quarters of an hour, and west of Greenwich', () => {
    expect(offsetText(offsetMinutes('Asia/Kathmandu', '2026-01-01T00:00:00Z'))).toBe('+05:45');
    expect(offsetText(offsetMinutes('America/St_Johns', '2026-01-01T00:00:00Z'))).toBe('-03:30');
    expect(offsetText(offsetMinutes('UTC', 0))).toBe('+00:00');
  });

  it('ends a day one minute before its exclusive end', () => {
    expect(dayAndTime(lastMinuteBefore('2026-10-27T23:00:00Z'), 'Europe/Paris')).toBe('27 Oct 2026 23:59');
  });
});

describe('a time on a paper sheet', () => {
  it('means one instant on most days', () => {
    expect(meaningsOf('2026-10-24', '23:40', 'Europe/Paris')).toEqual([
      { at: '2026-10-24T23:40+02:00', offset: '+02:00' },
    ]);
    expect(meaningsOf('2026-10-25', '12:00', 'UTC')).toHaveLength(1);
  });

  it('means two in the hour that clocks show twice, the first one first', () => {
    expect(meaningsOf('2026-10-25', '02:20', 'Europe/Paris').map(({ at }) => at)).toEqual([
      '2026-10-25T02:20+02:00',
      '2026-10-25T02:20+01:00',
    ]);
    expect(meaningsOf('2026-10-25', '03:00', 'Europe/Paris')).toHaveLength(1);
    expect(meaningsOf('2026-11-01', '01:30', 'America/St_Johns').map(({ offset }) => offset)).toEqual([
      '-02:30',
      '-03:30',
    ]);
  });

  it('means nothing in the hour that clocks leave out, and where it is no date or time', () => {
    expect(meaningsOf('2026-03-29', '02:30', 'Europe/Paris')).toEqual([]);
    expect(meaningsOf('', '02:30', 'Europe/Paris')).toEqual([]);
    expect(meaningsOf('2026-02-31', '02:30', 'Europe/Paris')).toEqual([]);
    expect(meaningsOf('2026-03-29', '25:00', 'Europe/Paris')).toEqual([]);
  });
});
