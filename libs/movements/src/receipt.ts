import { Temporal } from 'temporal-polyfill';

/** When something was received: the text as UTC, its minute for dating, its milliseconds for the order of arrival. */
export interface Receipt {
  at: string;
  minute: number;
  milliseconds: number;
}

const shape = /^(?:19[89]|2[01]\d)\d-\d\d-\d\dT\d\d:\d\d(?::[0-5]\d(?:\.\d{1,9})?)?(?:Z|[+-]\d\d:\d\d)$/;

/** An instant in ISO 8601 with Z or an offset, from 1980 to 2199; null for anything else. */
export function readReceipt(text: string): Receipt | null {
  if (typeof text !== 'string' || !shape.test(text)) return null;
  try {
    const instant = Temporal.Instant.from(text);
    const milliseconds = instant.epochMilliseconds;
    return { at: instant.toString(), minute: Math.floor(milliseconds / 60_000), milliseconds };
  } catch {
    return null;
  }
}
