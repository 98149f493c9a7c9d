/** Instants in here are whole minutes since 1970-01-01T00:00Z, days are whole days since then: messages know no more. */
export const minutesPerDay = 1440;

/** `2026-01-21T11:00:00Z`. */
export function writeMinute(minute: number): string {
  const day = dayOfMinute(minute);
  const clock = minute - day * minutesPerDay;
  return `${writeDay(day)}T${two(Math.floor(clock / 60))}:${two(clock % 60)}:00Z`;
}

/** `2026-01-21`. */
export function writeDay(day: number): string {
  const { year, month, date } = dateOf(day);
  return `${String(year).padStart(4, '0')}-${two(month)}-${two(date)}`;
}

export function dayOfMonth(day: number): number {
  return dateOf(day).date;
}

/**
 * The Gregorian date of a day, by arithmetic: a year of messages asks for it a million times. Counted in years that begin
 * with March, so that the leap day is the last one, and in eras of 400 years, which all have the same number of days.
 */
function dateOf(day: number): { year: number; month: number; date: number } {
  const shifted = day + 719_468;
  const era = Math.floor(shifted / 146_097);
  const ofEra = shifted - era * 146_097;
  const yearOfEra = Math.floor(
    (ofEra - Math.floor(ofEra / 1460) + Math.floor(ofEra / 36_524) - Math.floor(ofEra / 146_096)) / 365,
  );
  const ofYear = ofEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const fromMarch = Math.floor((5 * ofYear + 2) / 153);
  const month = fromMarch < 10 ? fromMarch + 3 : fromMarch - 9;
  const date = ofYear - Math.floor((153 * fromMarch + 2) / 5) + 1;
  return { year: yearOfEra + era * 400 + (month <= 2 ? 1 : 0), month, date };
}

/** The day of a date; a date that there is not gives the one that it runs over to. */
export function dayOf({ year, month, date }: { year: number; month: number; date: number }): number {
  const shifted = month <= 2 ? year - 1 : year;
  const era = Math.floor(shifted / 400);
  const yearOfEra = shifted - era * 400;
  const ofYear = Math.floor((153 * (month > 2 ? month - 3 : month + 9) + 2) / 5) + date - 1;
  const ofEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + ofYear;
  return era * 146_097 + ofEra - 719_468;
}

function two(number: number): string {
  return number < 10 ? `0${number}` : String(number);
}

export function dayOfMinute(minute: number): number {
  return Math.floor(minute / minutesPerDay);
}

/** The first instant not before `floor` at which clocks in UTC show this minute of the day. */
export function firstAtOrAfter(clock: number, floor: number): number {
  return floor + modulo(clock - floor, minutesPerDay);
}

/** The last instant not after `ceiling` at which clocks in UTC show this minute of the day. */
export function lastAtOrBefore(clock: number, ceiling: number): number {
  return ceiling - modulo(ceiling - clock, minutesPerDay);
}

function modulo(number: number, by: number): number {
  return ((number % by) + by) % by;
}
