/** The proposal against every way to hand out a few aircraft. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { proposeSwap } from './propose-swap.js';
import type { Rotation, SwapAnswer, SwapQuestion } from './rotation.js';

const FLEET = ['Q-AAA', 'Q-AAB', 'Q-AAC', 'Q-AAD'];
/** Mostly one station, so that most aircraft may exchange. */
const PLACES = [...Array<string>(12).fill('Northmere'), 'Saltby'];
const FLIES = ['nothing-open', 'may-fly', 'after-work'];

/** Up to four aircraft and rotations of up to three flights; most pairs may fly, so that both ends are met often. */
const questions: fc.Arbitrary<SwapQuestion> = fc
  .tuple(fc.integer({ min: 1, max: 4 }), fc.integer({ min: 0, max: 1 }))
  .chain(([length, spares]) => {
    const aircraft = FLEET.slice(0, length);
    const rotations = aircraft.slice(0, Math.max(1, length - spares));
    const flights = rotations.map((planned, at) => ({ planned, at }));
    const rotation = ({ planned, at }: { planned: string; at: number }) =>
      fc
        .record({
          legs: fc.integer({ min: 1, max: 3 }),
          from: fc.constantFrom(...PLACES),
          allowed: fc.array(fc.subarray(aircraft, { minLength: Math.min(3, aircraft.length) }), {
            minLength: 3,
            maxLength: 3,
          }),
        })
        .map(({ legs, from, allowed }): Rotation => ({
          id: `R${at}`,
          planned,
          flights: Array.from({ length: legs }, (_, leg) => ({
            id: `${at}-${leg}`,
            from,
            to: from,
            offBlockAt: `2026-03-10T0${6 + leg}:00Z`,
            allowed: allowed[leg]!,
          })),
        }));
    return fc
      .record({
        rotations: fc.tuple(...flights.map(rotation)),
        verdicts: fc.array(
          fc.constantFrom(
            ...Array<string>(9).fill('may-fly'),
            'nothing-open',
            'after-work',
            'not-settled',
            'may-not-fly',
          ),
          { minLength: 48, maxLength: 48 },
        ),
        minutes: fc.array(fc.constantFrom(0, 10, 20, 35, null), { minLength: 48, maxLength: 48 }),
        places: fc.array(fc.constantFrom(...PLACES), {
          minLength: 4,
          maxLength: 4,
        }),
      })
      .map(({ rotations, verdicts, minutes, places }): SwapQuestion => ({
        aircraft: aircraft.map((id, at) => ({
          id,
          at: places[at]!,
          readyAt: `2026-03-10T0${5 + (at === 3 ? 1 : 0)}:30Z`,
        })),
        rotations,
        answers: rotations
          .flatMap(({ flights }) => flights)
          .flatMap(({ id }) => aircraft.map((one) => ({ flight: id, aircraft: one })))
          .map((pair, at): SwapAnswer => ({
            ...pair,
            verdict: verdicts[at % 48] as SwapAnswer['verdict'],
            minutes: minutes[(at * 7) % 48]!,
            because: 'as drawn',
          })),
      }));
  });

/** Whether an aircraft may fly a flight of a rotation, read straight from the question. */
function mayTake({ aircraft, answers }: SwapQuestion, id: string, { flights }: Rotation, flight: string): boolean {
  const one = aircraft.find((standing) => standing.id === id)!;
  const asked = flights.find((leg) => leg.id === flight)!;
  const answer = answers.find((given) => given.aircraft === id && given.flight === flight)!;
  return (
    one.at === flights[0]!.from &&
    Date.parse(one.readyAt) <= Date.parse(flights[0]!.offBlockAt) &&
    asked.allowed!.includes(id) &&
    FLIES.includes(answer.verdict)
  );
}

/** Every way to give each of the rotations an aircraft of its own. */
function* handings(rotations: readonly Rotation[], left: readonly string[]): Generator<[Rotation, string | null][]> {
  const [first, ...rest] = rotations;
  if (first === undefined) return yield [];
  for (const others of handings(rest, left)) yield [[first, null], ...others];
  for (const id of left) {
    for (const others of handings(
      rest,
      left.filter((one) => one !== id),
    ))
      yield [[first, id], ...others];
  }
}

function covered(question: SwapQuestion, handing: [Rotation, string | null][], flights: readonly string[]): boolean {
  return handing.every(([rotation, id]) =>
    rotation.flights
      .filter((flight) => flights.includes(flight.id))
      .every((flight) => id !== null && mayTake(question, id, rotation, flight.id)),
  );
}

function costOf({ answers }: SwapQuestion, handing: [Rotation, string | null][]): number[] {
  const flown = handing.flatMap(([rotation, id]) => rotation.flights.map((flight) => ({ rotation, id, flight })));
  const minutes = flown.map(
    ({ id, flight }) => answers.find((one) => one.aircraft === id && one.flight === flight.id)!.minutes,
  );
  return [
    flown.filter(({ rotation, id }) => rotation.planned !== id).length,
    minutes.filter((one) => one === null).length,
    minutes.reduce<number>((sum, one) => sum + (one ?? 0), 0),
  ];
}

const less = (a: number[], b: number[]): number => a.map((one, at) => one - b[at]!).find((by) => by !== 0) ?? 0;

function* subsets(ids: readonly string[], size: number): Generator<string[]> {
  if (size === 0) return yield [];
  for (const [at, id] of ids.entries()) {
    for (const rest of subsets(ids.slice(at + 1), size - 1)) yield [id, ...rest];
  }
}

it('a swap is the best of all that exist, and when none exists the flights named are the fewest that cannot be covered', async () => {
  const seen = { proposed: 0, impossible: 0, 'not-offered': 0 };
  await fc.assert(
    fc.asyncProperty(questions, async (question) => {
      const all = [
        ...handings(
          question.rotations,
          question.aircraft.map(({ id }) => id),
        ),
      ];
      const flights = question.rotations.flatMap((rotation) => rotation.flights.map(({ id }) => id));
      const costs = all.filter((one) => covered(question, one, flights)).map((one) => costOf(question, one));
      const proposal = await proposeSwap(question);
      seen[proposal.answer] += 1;
      if (proposal.answer === 'proposed') {
        const handing = proposal.assignments.map(({ rotation, aircraft }): [Rotation, string] => [
          question.rotations.find(({ id }) => id === rotation)!,
          aircraft,
        ]);
        expect(covered(question, handing, flights)).toBe(true);
        expect(new Set(handing.map(([, id]) => id)).size).toBe(question.rotations.length);
        expect([proposal.changedFlights, proposal.withoutFigure, proposal.minutes]).toEqual(costs.sort(less)[0]);
        expect(costOf(question, handing)).toEqual(costs[0]);
        return;
      }
      expect(costs).toEqual([]);
      if (proposal.answer !== 'impossible') throw new Error('a list was given for every flight');
      const named = proposal.flights.map(({ flight }) => flight);
      expect(all.some((one) => covered(question, one, named))).toBe(false);
      for (const fewer of subsets(flights, named.length - 1)) {
        expect(all.some((one) => covered(question, one, fewer))).toBe(true);
      }
    }),
    { numRuns: 90, seed: 7 },
  );
  expect(Math.min(seen.proposed, seen.impossible)).toBeGreaterThan(15);
});

it('a swap is the same whatever the order of what is given', async () => {
  await fc.assert(
    fc.asyncProperty(questions, async ({ aircraft, rotations, answers }) => {
      const turned = {
        aircraft: aircraft.toReversed(),
        rotations: rotations.toReversed(),
        answers: answers.toReversed(),
      };
      expect(await proposeSwap(turned)).toEqual(await proposeSwap({ aircraft, rotations, answers }));
    }),
    { numRuns: 25, seed: 11 },
  );
});
