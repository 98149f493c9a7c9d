const LONGEST_SECONDS = 6 * 3600;
const LONGEST_ASKED_SECONDS = 24 * 3600;

/**
 * Seconds until a reminder is tried again: twice as long each time, at most six hours.
 * @param attempts made so far, from 1
 * @param askedSeconds what the receiver asked for (retry-after), up to a day; null when it asked for nothing
 */
export function pauseAfter(attempts: number, firstSeconds: number, askedSeconds: number | null): number {
  const grown = Math.min(LONGEST_SECONDS, firstSeconds * 2 ** Math.min(attempts - 1, 30));
  return Math.max(grown, Math.min(askedSeconds ?? 0, LONGEST_ASKED_SECONDS));
}

/** What a retry-after header asks for (RFC 9110 10.2.3): seconds, or an instant; null when it can be read as neither. */
export function retryAfterSeconds(header: string | undefined, now: string): number | null {
  const said = header?.trim() ?? '';
  if (/^\d{1,9}$/.test(said)) return Number(said);
  const at = /^[A-Z][a-z]{2}, \d\d [A-Z][a-z]{2} \d{4} [\d:]{8} GMT$/.test(said) ? Date.parse(said) : Number.NaN;
  return Number.isNaN(at) ? null : Math.max(0, Math.ceil((at - Date.parse(now)) / 1000));
}
