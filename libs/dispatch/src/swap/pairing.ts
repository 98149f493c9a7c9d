/** Which aircraft may take which rotation, and what it would cost; and why the others may not. */
import { millisOf } from '../frame/moment.js';
import { byCode } from '../units/unit.js';
import { VERDICT_WORDS, type VerdictCode } from '../verdict.js';
import type { Rotation, StandingAircraft, SwapAnswer, SwapFlight, SwapQuestion } from './rotation.js';

/** One aircraft on one rotation. It stands there in time; `misses` are the flights that it may not fly or is not allowed. */
export interface Pair {
  aircraft: string;
  rotation: Rotation;
  misses: ReadonlySet<string>;
}

/** Unknown is not yes: what is not settled is not offered. */
const FLIES: readonly VerdictCode[] = ['nothing-open', 'may-fly', 'after-work'];

export class Pairing {
  readonly aircraft: readonly StandingAircraft[];
  readonly rotations: readonly Rotation[];
  /** Every pair that stands at the right place in time, in an order of its own. */
  readonly pairs: readonly Pair[];
  readonly #answers: ReadonlyMap<string, SwapAnswer>;

  constructor({ aircraft, rotations, answers }: SwapQuestion) {
    this.aircraft = [...aircraft].sort((a, b) => byCode(a.id, b.id));
    this.rotations = [...rotations].sort((a, b) => byCode(a.id, b.id));
    this.#answers = new Map(answers.map((answer) => [keyOf(answer.aircraft, answer.flight), answer]));
    this.pairs = this.rotations.flatMap((rotation) =>
      this.aircraft
        .filter((one) => standsInTime(one, rotation) === null)
        .map(({ id }) => ({ aircraft: id, rotation, misses: this.#misses(id, rotation) })),
    );
  }

  /** Null when the aircraft may fly the flight of the rotation. */
  whyNot(aircraft: StandingAircraft, rotation: Rotation, flight: SwapFlight): string | null {
    return standsInTime(aircraft, rotation) ?? this.#whyNotFlown(aircraft.id, flight);
  }

  /** Outstanding minutes of an aircraft before a flight; null when some work has no figure. */
  minutes(aircraft: string, flight: string): number | null {
    return this.#answers.get(keyOf(aircraft, flight))?.minutes ?? null;
  }

  #misses(aircraft: string, { flights }: Rotation): Set<string> {
    return new Set(flights.filter((flight) => this.#whyNotFlown(aircraft, flight) !== null).map(({ id }) => id));
  }

  #whyNotFlown(aircraft: string, { id, allowed = [] }: SwapFlight): string | null {
    if (!allowed.includes(aircraft)) return `${aircraft}: operations do not allow it on this flight`;
    const answer = this.#answers.get(keyOf(aircraft, id));
    if (answer === undefined) return `${aircraft}: nobody has asked whether it may fly this flight`;
    if (FLIES.includes(answer.verdict)) return null;
    return `${aircraft}: ${VERDICT_WORDS[answer.verdict]}. ${answer.because}`;
  }
}

/** Null when it stands where the rotation begins and is ready before it leaves. */
function standsInTime({ id, at, readyAt }: StandingAircraft, { flights: [first] }: Rotation): string | null {
  if (first === undefined || at !== first.from) return `${id}: it stands at ${at}`;
  return millisOf('readyAt', readyAt) <= millisOf('offBlockAt', first.offBlockAt)
    ? null
    : `${id}: it is ready at ${readyAt} only`;
}

function keyOf(aircraft: string, flight: string): string {
  return JSON.stringify([aircraft, flight]);
}
