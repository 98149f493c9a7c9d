import { Temporal } from 'temporal-polyfill';
import { dayOf, minutesPerDay, writeDay } from './utc-minute.js';

/** When something was received: the text as UTC, its minute for dating, its milliseconds for the order of arrival. */
export interface Receipt {
  at: string;
  minute: number;
  milliseconds: number;
}

const shape = /^((?:19[89]|2[01]\d)\d)-(\d\d)-(\d\d)T(\d\d):(\d\d)(?::([0-5]\d)(?:\.(\d{1,9}))?)?(Z|[+-]\d\d:\d\d)$/;

/** An instant in ISO 8601 with Z or an offset, from 1980 to 2199; null for anything else. */
export function readReceipt(text: string): Receipt | null {
  const parts = typeof text === 'string' ? shape.exec(text) : null;
  if (parts === null) return null;
  return parts[8] === 'Z' ? readInUtc(parts) : readWithOffset(text);
}

/** By arithmetic: each of many thousand messages brings one. */
function readInUtc([
  ,
  year,
  month,
  day,
  hour,
  minute,
  second = '00',
  fraction = '',
]: RegExpExecArray): Receipt | null {
  const [hours, minutes] = [Number(hour), Number(minute)];
  const date = dayOf({ year: Number(year), month: Number(month), date: Number(day) });
  if (hours > 23 || minutes > 59 || writeDay(date) !== `${year}-${month}-${day}`) return null;
  const at = date * minutesPerDay + hours * 60 + minutes;
  const rest = fraction.replace(/0+$/, '');
  return {
    at: `${year}-${month}-${day}T${hour}:${minute}:${second}${rest === '' ? '' : `.${rest}`}Z`,
    minute: at,
    milliseconds: (at * 60 + Number(second)) * 1000 + Number(fraction.padEnd(3, '0').slice(0, 3)),
  };
}

function readWithOffset(text: string): Receipt | null {
  try {
    const instant = Temporal.Instant.from(text);
    const milliseconds = instant.epochMilliseconds;
    return { at: instant.toString(), minute: Math.floor(milliseconds / 60_000), milliseconds };
  } catch {
    return null;
  }
}
