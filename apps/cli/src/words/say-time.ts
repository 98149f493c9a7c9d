/** Days and instants as they are read aloud. Always English and UTC, so that an answer reads alike on every machine. */
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** `2026-01-29` -> `29 Jan 2026` */
export function sayDay(day: string): string {
  const [year, month, date] = day.split('-').map(Number);
  return `${date} ${MONTHS[(month ?? 1) - 1]} ${year}`;
}

/** `2026-01-29T09:30:00Z` -> `29 Jan 2026 09:30 UTC`; seconds only where there are any. */
export function sayInstant(instant: string): string {
  const utc = new Date(instant).toISOString();
  const seconds = utc.slice(17, 19) === '00' ? '' : utc.slice(16, 19);
  return `${sayDay(utc.slice(0, 10))} ${utc.slice(11, 16)}${seconds} UTC`;
}

/** `95` -> `1 h 35 min` */
export function sayMinutes(minutes: number): string {
  const hours = Math.floor(minutes / 60);
  const rest = minutes % 60;
  return [hours > 0 ? `${hours} h` : '', rest > 0 || hours === 0 ? `${rest} min` : ''].filter(Boolean).join(' ');
}

/** `count(1, 'entry', 'entries')` -> `1 entry` */
export function count(number: number, one: string, many = `${one}s`): string {
  return `${number} ${number === 1 ? one : many}`;
}
