import type { Temporal } from 'temporal-polyfill';
import { startOfDay } from './calendar-day.js';
import type { NoticeRule } from './presets/preset.js';

/** When the authority must have been told of an extension. */
export interface NoticeDue {
  dueAt: Temporal.Instant;
  /** The calendar day, in the base, on which it is due. */
  dueOn: Temporal.PlainDate;
}

/**
 * Hours run on the clock; a month ends at the same clock reading a month later (31 Jan -> 28 Feb); a working day is
 * Monday to Friday without `holidays`, and the notice is due by the end of it.
 *
 * Granted Fri 27 Nov 15:00: 24 hours -> Sat 28 Nov 15:00; one working day -> end of Mon 30 Nov.
 */
export function noticeDue(
  granted: Temporal.Instant,
  rule: NoticeRule,
  base: string,
  holidays: readonly string[],
): NoticeDue {
  const local = granted.toZonedDateTimeISO(base);
  if ('workingDays' in rule) {
    const dueOn = workingDayAfter(local.toPlainDate(), rule.workingDays, holidays);
    return { dueAt: startOfDay(dueOn.add({ days: 1 }), base), dueOn };
  }
  const due = 'months' in rule ? local.add({ months: rule.months }) : local.add({ hours: rule.hours });
  return { dueAt: due.toInstant(), dueOn: due.toPlainDate() };
}

function workingDayAfter(day: Temporal.PlainDate, count: number, holidays: readonly string[]): Temporal.PlainDate {
  let found = day;
  for (let left = count; left > 0;) {
    found = found.add({ days: 1 });
    if (found.dayOfWeek <= 5 && !holidays.includes(found.toString())) left -= 1;
  }
  return found;
}
