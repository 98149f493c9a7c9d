/** Days and instants as a document reads them: always English, always with their zone. */
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** `2026-02-05` -> `5 Feb 2026`. */
export function sayDay(day: string): string {
  const [year, month, date] = day.split('-').map(Number);
  return `${date} ${MONTHS[(month ?? 1) - 1]} ${year}`;
}

/** `2026-02-05T23:30:00Z` -> `5 Feb 2026 23:30 UTC`; with another base also `(6 Feb 2026 01:30 Europe/Athens)`. */
export function sayInstant(at: string, base = 'UTC'): string {
  const utc = `${reading(at, 'UTC')} UTC`;
  return base === 'UTC' ? utc : `${utc} (${reading(at, base)} ${base})`;
}

function reading(at: string, timeZone: string): string {
  const parts = new Intl.DateTimeFormat('en-CA', {
    timeZone,
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  }).formatToParts(new Date(at));
  const part = (type: Intl.DateTimeFormatPartTypes) => parts.find((one) => one.type === type)?.value ?? '';
  return `${sayDay(`${part('year')}-${part('month')}-${part('day')}`)} ${part('hour')}:${part('minute')}`;
}
