/** One of the two evaluators is wrong: nothing is signed on its word, nor on the other's. */
import { pino } from 'pino';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { closureOf, type SecondEvaluator } from '#dispatch';
import type { Shapes } from '../support/api-client.js';
import { databaseDigest } from '../support/database-digest.js';
import { PublishedRowsScene } from './published-rows-scene.js';

let lies = true;

/** Finds a proviso false that asks whether the approach minima need an item, whatever is known. */
const lying: SecondEvaluator = (mel, proviso) => {
  const closure = closureOf(mel, proviso);
  if (!lies || !proviso.text.includes('approach minima')) return closure;
  return { ...closure, judge: (lookup) => ({ ...closure.judge(lookup), now: 'F', after: 'F' }) };
};

const lines: string[] = [];
const scene = new PublishedRowsScene({
  at: '2026-03-02T09:00:00.000Z',
  aircraft: ['Q-ABA', 'Q-ABB'],
  flights: ['Q-ABA', 'Q-ABB'].map((aircraft) => ({
    number: `of ${aircraft}`,
    aircraft,
    offBlockAt: '2026-03-02T12:00:00Z',
    onBlockAt: '2026-03-02T13:00:00Z',
  })),
  server: {
    secondEvaluator: lying,
    logger: pino({ level: 'error' }, { write: (line: string) => void lines.push(line) }),
  },
});

beforeAll(() => scene.open());
afterAll(() => scene.server.stop());

describe('where the two evaluators disagree', () => {
  it('a deferral is refused, says so, and leaves nothing behind', async () => {
    const id = await scene.writtenUp('Q-ABA', '22-10-01');
    const before = await databaseDigest(scene.server.ownerUrl);
    const refusal = await scene.technician.signRefused(id, 'deferral', { act: 'defer', row: '1' }, { row: '1' });
    expect(refusal).toMatchObject({
      code: 'judges-disagree',
      status: 500,
      next: 'Do not dispatch on this answer; call maintenance control.',
      conditions: [`22-10-01/1 (${id}): 22-10-01/1/a`],
    });
    expect(refusal.detail).toContain('For Q-ABA one says "not-settled", the other "may-not-fly"');
    expect(await databaseDigest(scene.server.ownerUrl)).toEqual(before);
  });

  it('the log holds both trees', () => {
    const told = lines.map((line) => JSON.parse(line) as Record<string, unknown>);
    expect(told).toMatchObject([
      {
        msg: 'the two judges disagree',
        aircraft: 'Q-ABA',
        disagreement: {
          engine: { lo: 'may-not-fly', hi: 'after-work' },
          compiled: { verdict: 'may-not-fly' },
          conditions: [
            {
              engine: { now: 'U', tree: { node: 'leaf', fact: 'flight.minimaNeed[22-10-01]' } },
              compiled: { now: 'F', tree: { node: 'leaf', fact: 'flight.minimaNeed[22-10-01]' } },
            },
          ],
        },
      },
    ]);
  });

  it('the fleet says so of that aircraft alone', async () => {
    lies = false;
    await scene.deferred('Q-ABB', '22-10-01', '1');
    lies = true;
    const { aircraft } = await scene.control.get<Shapes['Fleet']>('/api/fleet');
    const next = (mark: string) => aircraft.find(({ registration }) => registration === mark)?.nextFlight;
    expect(next('Q-ABA')?.why).toContain('Not every write-up is answered');
    expect(next('Q-ABB')).toMatchObject({ verdict: 'not-settled' });
    expect(next('Q-ABB')?.why).toContain('Two ways of computing the answer disagree. For Q-ABB one says');
  });
});
