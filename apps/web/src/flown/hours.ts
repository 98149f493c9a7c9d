/** `4:20`: hours and minutes, never decimal hours; a count of engine hours reads the same. */
export function hoursText(minutes: number): string {
  const size = Math.abs(minutes);
  return `${minutes < 0 ? '-' : ''}${Math.floor(size / 60)}:${String(size % 60).padStart(2, '0')}`;
}

/** Whole minutes of `4:20`; null for anything else. */
export function minutesIn(text: string): number | null {
  const [, hours, minutes] = /^(\d{1,6}):([0-5]\d)$/.exec(text.trim()) ?? [];
  return hours === undefined || minutes === undefined ? null : Number(hours) * 60 + Number(minutes);
}
