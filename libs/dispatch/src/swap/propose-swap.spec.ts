import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { proposeSwap } from './propose-swap.js';
import type { Rotation, SwapAnswer, SwapProposal, SwapQuestion } from './rotation.js';

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

describe('a swap of aircraft', () => {
  it('is the best of all that exist, and when none exists the flights named are the fewest that cannot be covered', async () => {
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

  const may = (aircraft: string, flight: string, verdict: SwapAnswer['verdict'] = 'may-fly', minutes = 0) => ({
    aircraft,
    flight,
    verdict,
    minutes,
    because: verdict === 'may-not-fly' ? 'The spoiler is locked.' : 'Nothing is in the way.',
  });
  const flight = (id: string, offBlockAt: string, allowed?: string[]) => ({
    id,
    from: 'Northmere',
    to: 'Northmere',
    offBlockAt,
    ...(allowed === undefined ? {} : { allowed }),
  });
  const standing = (id: string, readyAt = '2026-03-10T05:00Z', at = 'Northmere') => ({ id, at, readyAt });
  const both = ['Q-AAA', 'Q-AAB'];
  const plan = (allowed?: string[]): Pick<SwapQuestion, 'aircraft' | 'rotations'> => ({
    aircraft: [standing('Q-AAA'), standing('Q-AAB')],
    rotations: [
      { id: 'R1', planned: 'Q-AAA', flights: [flight('101', '2026-03-10T06:00Z', allowed)] },
      { id: 'R2', planned: 'Q-AAB', flights: [flight('201', '2026-03-10T07:00Z', both)] },
    ],
  });
  const crossed = [may('Q-AAA', '101', 'may-not-fly'), may('Q-AAA', '201'), may('Q-AAB', '101'), may('Q-AAB', '201')];

  it('exchanges two rotations where the planned aircraft may not fly one of them', async () => {
    expect(await proposeSwap({ ...plan(both), answers: crossed })).toMatchObject({
      answer: 'proposed',
      changedFlights: 2,
      assignments: [
        { rotation: 'R1', planned: 'Q-AAA', aircraft: 'Q-AAB' },
        { rotation: 'R2', planned: 'Q-AAB', aircraft: 'Q-AAA' },
      ],
    });
  });

  it('is not offered while operations have not said whom they allow', async () => {
    const answer = await proposeSwap({ ...plan(), answers: crossed });
    expect(answer).toMatchObject({ answer: 'not-offered', flights: ['101'] });
  });

  it('keeps the plan where it can be kept, even with more work', async () => {
    const answers = [
      may('Q-AAA', '101', 'after-work', 90),
      may('Q-AAA', '201'),
      may('Q-AAB', '101'),
      may('Q-AAB', '201', 'after-work', 90),
    ];
    const answer = await proposeSwap({ ...plan(both), answers });
    expect(answer).toMatchObject({ answer: 'proposed', changedFlights: 0, minutes: 180 });
  });

  it('says of each flight that cannot be covered why no aircraft takes it', async () => {
    const question: SwapQuestion = {
      ...plan(['Q-AAB']),
      aircraft: [standing('Q-AAA'), standing('Q-AAB', '2026-03-10T06:30Z'), standing('Q-AAC', undefined, 'Saltby')],
      answers: crossed,
    };
    expect(await proposeSwap(question)).toEqual({
      answer: 'impossible',
      because: 'No aircraft can fly 101.',
      flights: [
        {
          flight: '101',
          couldBe: [],
          because: [
            'Q-AAA: operations do not allow it on this flight',
            'Q-AAB: it is ready at 2026-03-10T06:30Z only',
            'Q-AAC: it stands at Saltby',
          ],
        },
      ],
    });
  });

  it('counts what nobody has asked, and what is not settled, as not flown', async () => {
    const one = await proposeSwap({
      ...plan(both),
      answers: [may('Q-AAA', '101'), may('Q-AAB', '201', 'not-settled')],
    });
    expect(one).toMatchObject({ answer: 'impossible', flights: [{ flight: '201' }] });
  });

  it('gives the same proposal whatever the order of what is given', async () => {
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

  const refused: [string, Partial<SwapQuestion>][] = [
    ['The aircraft "Q-AAA" is named twice.', { aircraft: [standing('Q-AAA'), standing('Q-AAA')] }],
    ['Rotation "R9" has no flight.', { rotations: [{ id: 'R9', planned: 'Q-AAA', flights: [] }] }],
    [
      'Rotation "R9" is planned for "Q-AAZ", of which nobody says where it stands.',
      { rotations: [{ id: 'R9', planned: 'Q-AAZ', flights: [flight('1', '2026-03-10T06:00Z', both)] }] },
    ],
    [
      'In rotation "R9" flight "2" leaves before flight "1".',
      {
        rotations: [
          {
            id: 'R9',
            planned: 'Q-AAA',
            flights: [flight('1', '2026-03-10T06:00Z', both), flight('2', '2026-03-10T05:00Z', both)],
          },
        ],
      },
    ],
  ];
  it.each(refused)('is refused: %s', async (message, change) => {
    await expect(proposeSwap({ ...plan(both), answers: [], ...change })).rejects.toThrow(message);
  });

  it('is told apart by its answer', async () => {
    const kinds: SwapProposal['answer'][] = ['proposed', 'impossible', 'not-offered'];
    const answers = await Promise.all([
      proposeSwap({ ...plan(both), answers: crossed }),
      proposeSwap({ ...plan(both), answers: [] }),
      proposeSwap({ ...plan(), answers: [] }),
    ]);
    expect(answers.map(({ answer }) => answer)).toEqual(kinds);
  });
});
