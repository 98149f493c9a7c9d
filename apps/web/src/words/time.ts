/** Instants as people read them: on a clock in a zone, and in UTC. Months are written out here, since browsers differ. */
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
const MINUTE_MS = 60_000;

const formats = new Map<string, Intl.DateTimeFormat>();

/** What a clock and a calendar in the zone show, with all numbers of two digits but the year. */
export interface Wall {
  year: string;
  month: string;
  day: string;
  hour: string;
  minute: string;
}

/** @param at instant, ISO 8601, or milliseconds */
export function wallIn(zone: string, at: string | number): Wall {
  let format = formats.get(zone);
  if (format === undefined) {
    format = new Intl.DateTimeFormat('en-GB', {
      timeZone: zone,
      year: 'numeric',
      month: '2-digit',
      day: '2-digit',
      hour: '2-digit',
      minute: '2-digit',
      hourCycle: 'h23',
    });
    formats.set(zone, format);
  }
  const parts = Object.fromEntries(format.formatToParts(new Date(at)).map(({ type, value }) => [type, value]));
  const { year = '', month = '', day = '', hour = '', minute = '' } = parts;
  return { year, month, day, hour, minute };
}

/** Minutes by which the zone is ahead of UTC at an instant. */
export function offsetMinutes(zone: string, at: string | number): number {
  const { year, month, day, hour, minute } = wallIn(zone, at);
  const asUtc = Date.UTC(Number(year), Number(month) - 1, Number(day), Number(hour), Number(minute));
  return Math.round((asUtc - Math.floor(new Date(at).getTime() / MINUTE_MS) * MINUTE_MS) / MINUTE_MS);
}

/** `+02:00` */
export function offsetText(minutes: number): string {
  const size = Math.abs(minutes);
  const two = (value: number) => String(value).padStart(2, '0');
  return `${minutes < 0 ? '-' : '+'}${two(Math.floor(size / 60))}:${two(size % 60)}`;
}

/** `4 Dec 2026 23:59` */
export function dayAndTime(at: string | number, zone: string): string {
  const { hour, minute } = wallIn(zone, at);
  return `${dayText(at, zone)} ${hour}:${minute}`;
}

/** `4 Dec 2026` */
export function dayText(at: string | number, zone: string): string {
  const { year, month, day } = wallIn(zone, at);
  return `${Number(day)} ${MONTHS[Number(month) - 1] ?? month} ${year}`;
}

/** `4 Dec 2026`, of a calendar day as it is sent. */
export function calendarDayText(day: string): string {
  return dayText(`${day}T12:00:00Z`, 'UTC');
}

/** `08:19 UTC`, with the day before it where it is another day than in the zone. */
export function utcBeside(at: string | number, zone: string): string {
  const { hour, minute } = wallIn('UTC', at);
  const sameDay = dayText(at, zone) === dayText(at, 'UTC');
  return `${sameDay ? '' : `${dayText(at, 'UTC')} `}${hour}:${minute} UTC`;
}

/** `25 Oct 2026 02:20 (UTC+01:00)` */
export function withOffset(at: string | number, zone: string): string {
  return `${dayAndTime(at, zone)} (UTC${offsetText(offsetMinutes(zone, at))})`;
}

/** `2026-10-25T02:20+01:00`, whole minutes: what is sent as a log time. */
export function sentWithOffset(at: string | number, zone: string): string {
  const { year, month, day, hour, minute } = wallIn(zone, at);
  return `${year}-${month}-${day}T${hour}:${minute}${offsetText(offsetMinutes(zone, at))}`;
}

/** The last minute before an exclusive end. */
export function lastMinuteBefore(endsAt: string): number {
  return Date.parse(endsAt) - MINUTE_MS;
}
