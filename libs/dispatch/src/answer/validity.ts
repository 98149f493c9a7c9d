/** An answer dies with the first of the things that it rests on. */
import type { JudgedChoice } from '../choice.js';
import type { Until } from '../frame/until.js';
import { inUtc, millisOf } from '../frame/moment.js';
import type { JudgedGate } from '../gates.js';
import { byCode } from '../units/unit.js';
import type { Verdict } from '../verdict.js';

export function validityOf(choice: JudgedChoice | null, gates: readonly JudgedGate[]): Verdict['validUntil'] {
  let first: Until | null = null;
  for (const until of untilsOf(choice, gates)) if (first === null || isBefore(until, first)) first = until;
  return first === null ? null : { at: inUtc('until', first.at), because: first.because };
}

function* untilsOf(choice: JudgedChoice | null, gates: readonly JudgedGate[]): Generator<Until> {
  for (const { items } of choice?.groups ?? [])
    for (const one of items) for (const { untils } of one.judged) yield* untils;
  for (const { untils } of gates) yield* untils;
}

/** Of two that end together the one that is read first. */
function isBefore(a: Until, b: Until): boolean {
  const difference = millisOf('until', a.at) - millisOf('until', b.at);
  return difference < 0 || (difference === 0 && byCode(a.because, b.because) < 0);
}
