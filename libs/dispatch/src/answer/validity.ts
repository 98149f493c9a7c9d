/** An answer dies with the first of the things that it rests on. */
import type { JudgedChoice } from '../choice.js';
import type { Until } from '../frame/until.js';
import { inUtc, millisOf } from '../frame/moment.js';
import type { JudgedGate } from '../gates.js';
import { byCode } from '../units/unit.js';
import type { Verdict } from '../verdict.js';

export function validityOf(choice: JudgedChoice | null, gates: readonly JudgedGate[]): Verdict['validUntil'] {
  const untils: Until[] = [
    ...(choice?.groups ?? []).flatMap(({ items }) =>
      items.flatMap((one) => one.judged.flatMap(({ untils: ends }) => ends)),
    ),
    ...gates.flatMap(({ untils: ends }) => ends),
  ];
  const [first] = untils.sort(
    (a, b) => millisOf('until', a.at) - millisOf('until', b.at) || byCode(a.because, b.because),
  );
  return first === undefined ? null : { at: inUtc('until', first.at), because: first.because };
}
