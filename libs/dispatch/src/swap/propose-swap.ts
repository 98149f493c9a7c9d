/**
 * Can the aircraft change rotations so that all flights may be flown?
 *
 * The proposal is made from answers that others gave, is stored nowhere, and is nobody's decision: operations swap
 * aircraft, and the reasoner is then asked again about each.
 */
import { assign, changedFlights, flightsWithoutFigure, minutesWithFigure } from './assign.js';
import { checkQuestion } from './check-question.js';
import { Pairing, type Pair } from './pairing.js';
import type { SwapProposal, SwapQuestion, UncoveredFlight } from './rotation.js';
import { smallestUncovered } from './smallest-uncovered.js';

/**
 * Throws SwapInputError when the question names something twice or an aircraft that stands nowhere, IntervalInputError
 * for an instant that is none.
 */
export async function proposeSwap(question: SwapQuestion): Promise<SwapProposal> {
  checkQuestion(question);
  const pairing = new Pairing(question);
  const silent = pairing.rotations.flatMap(({ flights }) => flights.filter(({ allowed }) => allowed === undefined));
  if (silent.length > 0) {
    const because = 'Operations have not said which aircraft they allow on each flight, so no swap is offered.';
    return { answer: 'not-offered', because, flights: silent.map(({ id }) => id) };
  }
  const assigned = await assign(pairing);
  return assigned === null ? impossible(pairing) : proposed(pairing, assigned);
}

function proposed(pairing: Pairing, assigned: readonly Pair[]): SwapProposal {
  const sum = (of: (pair: Pair) => number): number => assigned.reduce((total, pair) => total + of(pair), 0);
  return {
    answer: 'proposed',
    assignments: assigned.map(({ aircraft, rotation }) => ({
      rotation: rotation.id,
      planned: rotation.planned,
      aircraft,
      flights: rotation.flights.map(({ id }) => id),
      minutes:
        flightsWithoutFigure(pairing, aircraft, rotation) > 0 ? null : minutesWithFigure(pairing, aircraft, rotation),
    })),
    changedFlights: sum(changedFlights),
    minutes: sum(({ aircraft, rotation }) => minutesWithFigure(pairing, aircraft, rotation)),
    withoutFigure: sum(({ aircraft, rotation }) => flightsWithoutFigure(pairing, aircraft, rotation)),
  };
}

async function impossible(pairing: Pairing): Promise<SwapProposal> {
  const ids = await smallestUncovered(pairing);
  const flights = pairing.rotations.flatMap((rotation) =>
    rotation.flights.filter(({ id }) => ids.includes(id)).map((flight) => uncovered(pairing, rotation, flight)),
  );
  const because =
    flights.length === 1
      ? `No aircraft can fly ${ids.join()}.`
      : `These flights cannot be flown together: ${ids.join(', ')}.`;
  return { answer: 'impossible', because, flights };
}

function uncovered(
  pairing: Pairing,
  rotation: Pair['rotation'],
  flight: Pair['rotation']['flights'][number],
): UncoveredFlight {
  const told = pairing.aircraft.map((one) => ({ id: one.id, why: pairing.whyNot(one, rotation, flight) }));
  return {
    flight: flight.id,
    because: told.flatMap(({ why }) => why ?? []),
    couldBe: told.filter(({ why }) => why === null).map(({ id }) => id),
  };
}
