import { describe, expect, it } from 'vitest';
import { proposeSwap } from './propose-swap.js';
import type { SwapAnswer, SwapProposal, SwapQuestion } from './rotation.js';

describe('a swap of aircraft', () => {
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
