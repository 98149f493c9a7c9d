/** Values that are read, held against the limits of the card. */
import type { Measure, StepOf } from '#mel';
import { Refusal } from '../refusal.js';
import type { ReadingTaken, StepResult } from './card-acts.js';

/** Throws Refusal `value-outside-limits` or `reading-missing`. */
export function admitMeasured(
  named: string,
  { measure }: StepOf<'measure'>,
  result: StepResult & { kind: 'measured' },
): void {
  admitReading(named, measure, { ...result, id: measure.id });
}

/** Throws Refusal. Each reading of the card, once, within its limits. */
export function admitReadings(named: string, { readings }: StepOf<'run'>, taken: readonly ReadingTaken[]): void {
  const missing = readings.filter((asked) => taken.filter((one) => one.id === asked.id).length !== 1);
  if (missing.length > 0 || taken.length !== readings.length) {
    throw new Refusal('reading-missing', {
      step: named,
      missing: (missing.length > 0 ? missing : readings).map(inWords),
    });
  }
  for (const asked of readings) {
    const given = taken.find((one) => one.id === asked.id);
    if (given) admitReading(named, asked, given);
  }
}

function admitReading(step: string, asked: Measure, { value, unit }: ReadingTaken): void {
  if (unit !== asked.unit || !Number.isFinite(value)) {
    throw new Refusal('reading-missing', { step, missing: [inWords(asked)] });
  }
  if (value >= (asked.from ?? -Infinity) && value <= (asked.to ?? Infinity)) return;
  const read = `${value} ${unit}`;
  throw new Refusal('value-outside-limits', { step, what: asked.what, value: read, limits: limitsInWords(asked) });
}

const inWords = ({ what, unit }: Measure): string => `${what} in ${unit}`;

/** "2 to 3 bar", "at most 90 C". */
export function limitsInWords({ from, to, unit }: Measure): string {
  if (from === undefined) return `at most ${to} ${unit}`;
  return to === undefined ? `at least ${from} ${unit}` : `${from} to ${to} ${unit}`;
}
