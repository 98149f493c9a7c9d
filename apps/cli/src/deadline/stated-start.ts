import type { StatedStart } from '#intervals';
import { UsageError } from '../usage-error.js';

const COUNTER = /^(\S+) read (\S+) at (\S+)$/;
const NUMBER = /^(\d{1,7})(?::([0-5]\d))?$/;

/**
 * Reads `--counts-from`: an instant, or a counter with what it read later: `410 read 412 at 2026-06-01T08:00Z`, hours as
 * `74000:00 read 74020:30 at 2026-06-01T08:00Z`.
 */
export function statedStart(text: string | undefined): StatedStart | undefined {
  if (text === undefined) return undefined;
  const [, counter, reading, readAt] = COUNTER.exec(text) ?? [];
  if (counter === undefined || reading === undefined || readAt === undefined) return { at: text };
  return { counter: numberOf(counter), reading: numberOf(reading), readAt };
}

/** Hours and minutes give whole minutes. */
function numberOf(text: string): number {
  const [, whole, minutes] = NUMBER.exec(text) ?? [];
  if (whole === undefined) throw new UsageError(`--counts-from "${text}" is neither 410 nor hours such as 410:30`);
  return minutes === undefined ? Number(whole) : Number(whole) * 60 + Number(minutes);
}
