/** Rule 11: the tree of questions tells what judging anew after each reply tells, down to every leaf. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { judge, planQuestions, readCase, type QuestionNode, type QuestionPlan, type Situation } from '#dispatch';
import { readMel, type Mel } from '#mel';
import { randomCase } from './verdicts.random.js';

type Value = string | number | boolean;

/** The situation after somebody has replied, as the reply would be recorded. */
function after(situation: Situation, fact: string, value: Value): Situation {
  const subject = /\[(.*)\]$/.exec(fact)?.[1] ?? '';
  if (fact.startsWith('defect.unit[')) {
    const defects = situation.defects.map((one) => (one.id === subject ? { ...one, units: [String(value)] } : one));
    return { ...situation, defects };
  }
  if (fact.startsWith('judgement.accepted[')) {
    const role = subject === 'combination' ? 'maintenance-control' : 'commander';
    const given = { judgement: subject, accepted: value === true, by: 'Ada Bright', role, at: situation.at } as const;
    return { ...situation, judgements: [...situation.judgements, given] };
  }
  if (fact.startsWith('work.done[')) {
    const work = situation.work.map((one) => (one.work === subject ? { ...one, possible: value === true } : one));
    return { ...situation, work };
  }
  return { ...situation, facts: { ...situation.facts, [fact]: { value } } };
}

async function follow(mel: Mel, situation: Situation, node: QuestionNode, left: { runs: number }): Promise<void> {
  if (left.runs <= 0) return;
  left.runs -= 1;
  const { verdict } = await judge(mel, situation);
  if ('verdict' in node) {
    expect(verdict).toBe(node.verdict);
    return;
  }
  expect(verdict).toBe('not-settled');
  for (const { value, next } of node.then) await follow(mel, after(situation, node.ask, value), next, left);
}

it('each path through the tree ends where judging the replies ends', async () => {
  const methods: Record<string, number> = {};
  let deep = 0;
  await fc.assert(
    fc.asyncProperty(randomCase, async ({ mel, situation: known }) => {
      const situation = { ...known, facts: {} };
      const { verdict } = await judge(mel, situation);
      const plan = await planQuestions(mel, situation);
      methods[plan.method] = (methods[plan.method] ?? 0) + 1;
      expect(plan.verdict).toBe(verdict);
      if (plan.tree === null) return;
      expect(plan.questions[0]?.fact).toBe('ask' in plan.tree ? plan.tree.ask : undefined);
      for (const { replies } of plan.questions) {
        expect(replies.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 9);
        expect(replies.length).toBeGreaterThan(1);
      }
      if ((plan.expected ?? 0) > 1) deep += 1;
      await follow(mel, situation, plan.tree, { runs: 40 });
    }),
    { numRuns: 250, seed: 8 },
  );
  expect(methods['least-expected']).toBeGreaterThan(30);
  expect(deep).toBeGreaterThan(10);
});

describe('with the published rows', () => {
  const loaded = readMel(readFileSync(new URL('published-rows-t1.yaml', import.meta.url), 'utf8'), 't1');
  if ('errors' in loaded) throw new Error(JSON.stringify(loaded.errors));
  const { mel } = loaded;
  const plan = (file: object): Promise<QuestionPlan> => {
    const read = readCase(
      {
        at: '2026-03-06T06:00Z',
        aircraft: { registration: 'Q-ABB', type: 'T1', configuration: [], serial: 100 },
        flight: { id: 'F1', from: 'Northmere', to: 'Saltby', offBlockAt: '2026-03-06T08:00Z' },
        ...file,
      },
      'case',
      mel,
      '2026a',
    );
    if ('errors' in read) throw new Error(JSON.stringify(read.errors));
    return planQuestions(mel, read.situation);
  };
  const apu = { id: 'D1', entry: '49-10-01', row: '2', recordedAt: '2026-03-05T14:00Z', used: { flights: 0 } };

  it('a threshold cuts a number in two, and one reply settles', async () => {
    const asked = await plan({ defects: [apu], work: ['49-10-01/2/O1'] });
    expect(asked).toMatchObject({ verdict: 'not-settled', method: 'least-expected', expected: 1 });
    expect(asked.questions).toMatchObject([
      {
        fact: 'flight.etopsMinutes',
        settles: 1,
        replies: [
          { words: 'at most 120', weight: 0.5 },
          { words: 'more than 120', weight: 0.5 },
        ],
      },
    ]);
  });

  it('nothing is asked of an aircraft that may not fly whatever the replies', async () => {
    const used = { ...apu, used: { flights: 4 } };
    expect(await plan({ defects: [used] })).toMatchObject({ method: 'nothing-to-ask', questions: [], expected: 0 });
  });
});
