/** The same MEL and the same situation written down in another order: entries, rows, provisos, defects, facts, and the keys of every object. */
import type { Situation } from '#dispatch';
import { loadMel, type Mel, type Row } from '#mel';
import type { Dice } from '../support/dice.js';
import type { DrawnCase } from './verdicts.draw.js';

export function rearranged({ mel, situation }: DrawnCase, dice: Dice): DrawnCase {
  const loaded = loadMel(keysShuffled(contentOf(mel, dice), dice), 'rearranged');
  if ('errors' in loaded) throw new Error(JSON.stringify(loaded.errors));
  return { mel: loaded.mel, situation: keysShuffled(situationOf(situation, dice), dice) };
}

function contentOf({ content }: Mel, dice: Dice): Mel['content'] {
  const rows = (list: Row[]): Row[] =>
    shuffled(list, dice).map((row) => ({
      ...row,
      ...(row.provisos === undefined ? {} : { provisos: shuffled(row.provisos, dice) }),
    }));
  const entries = shuffled(content.entries, dice).map((entry) => ({
    ...entry,
    subEntries: entry.subEntries.map((sub) => ({ ...sub, rows: rows(sub.rows) })),
  }));
  return { ...content, entries };
}

function situationOf(situation: Situation, dice: Dice): Situation {
  return {
    ...situation,
    defects: shuffled(situation.defects, dice),
    work: shuffled(situation.work, dice),
    judgements: shuffled(situation.judgements, dice),
  };
}

function keysShuffled<T>(value: T, dice: Dice): T {
  if (Array.isArray(value)) return value.map((one) => keysShuffled(one, dice)) as T;
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    shuffled(Object.entries(value), dice).map(([key, one]) => [key, keysShuffled(one, dice)]),
  ) as T;
}

function shuffled<T>(list: readonly T[], dice: Dice): T[] {
  return list
    .map((one) => ({ one, by: dice.throw() }))
    .sort((a, b) => a.by - b.by)
    .map(({ one }) => one);
}
