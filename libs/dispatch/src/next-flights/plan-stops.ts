/**
 * The stops of a plan as every choice of rows finds them: the clock, the counters and what is known of the flight and its
 * station hang on the flights alone. Only the work done on the way differs from choice to choice. Stops are looked at when
 * they are first asked for.
 */
import type { PlannedFlight, Situation, Used, WorkState } from '../situation.js';
import { atStop, type Stops } from './at-stop.js';
import { countFlight, flownAs } from './count-flight.js';
import { doneFor, flyOn, NOTHING_USED } from './fly-on.js';

/** Work done on the way, at the stop of this index. */
export interface DoneOnWay {
  work: string;
  defect?: string;
  stop: number;
}

export class PlanStops {
  /** The situation on arrival at each stop, with no work done on the way. */
  readonly #arrivals: Situation[];
  readonly #used = new Map<number, Used>();

  constructor(
    readonly stops: Stops,
    readonly start: Situation,
    readonly flights: readonly PlannedFlight[],
  ) {
    this.#arrivals = [start];
  }

  arrival(index: number): Situation {
    for (let at = this.#arrivals.length; at <= index; at++) {
      this.#arrivals.push(flyOn(this.#arrivals[at - 1]!, this.flights[at - 1]!, null));
    }
    return this.#arrivals[index]!;
  }

  /** The situation before the flight, as the station leaves it; what was done on the way is among the work of `flown`. */
  leaving(index: number, flown = this.arrival(index)): Situation {
    return atStop(this.stops, flown, this.flights[index]!, index === 0);
  }

  /** The record of work done on the way, as it stands at a later stop. */
  record(done: DoneOnWay, index: number): WorkState {
    return { ...doneFor(this.flights[done.stop]!, done), usedSince: this.#usedBetween(done.stop, index) };
  }

  /** What is flown from one stop to another. */
  #usedBetween(from: number, to: number): Used {
    const key = from * this.flights.length + to;
    let used = this.#used.get(key);
    if (used === undefined) {
      const { offBlockAt } = this.flights[from]!;
      const last = flownAs(this.flights[to - 1]!, this.start);
      const before = to - 1 === from ? NOTHING_USED : this.#usedBetween(from, to - 1);
      this.#used.set(key, (used = countFlight(before, offBlockAt, last, this.start)));
    }
    return used;
  }
}
