import type { Temporal } from 'temporal-polyfill';

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
const DAYS_NAMED_ONE_BY_ONE = 3;

/** `26 Jan 2026`; always English, because a stored explanation must not depend on the reader's machine. */
export function sayDay(day: Temporal.PlainDate): string {
  return `${day.day} ${MONTHS[day.month - 1]} ${day.year}`;
}

/** `26 Jan 2026 10:00` on the clocks of the base. */
export function sayLocal(instant: Temporal.Instant, base: string): string {
  const local = instant.toZonedDateTimeISO(base);
  return `${sayDay(local.toPlainDate())} ${two(local.hour)}:${two(local.minute)} ${base === 'UTC' ? 'UTC' : 'local'}`;
}

/** `1 Feb, 2 Feb, 3 Feb` for a few days, `1 Feb to 10 Feb (10 days)` for many. */
export function sayDays(first: Temporal.PlainDate, count: number): string {
  if (count > DAYS_NAMED_ONE_BY_ONE)
    return `days ${short(first)} to ${short(first.add({ days: count - 1 }))} (${count} days)`;
  const days = Array.from({ length: count }, (_, index) => short(first.add({ days: index })));
  return `${count === 1 ? 'day' : 'days'} ${days.join(', ')}`;
}

/** `6 h 12 min`, `4 h`, `45 min`. Minutes are integers; decimal hours would not add up. */
export function sayMinutes(minutes: number): string {
  const hours = Math.floor(Math.abs(minutes) / 60);
  const rest = Math.abs(minutes) % 60;
  const text = [hours ? `${hours} h` : '', rest || !hours ? `${rest} min` : ''].filter(Boolean).join(' ');
  return minutes < 0 ? `minus ${text}` : text;
}

function short(day: Temporal.PlainDate): string {
  return `${day.day} ${MONTHS[day.month - 1]}`;
}

function two(number: number): string {
  return String(number).padStart(2, '0');
}
