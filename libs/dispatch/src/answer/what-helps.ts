/**
 * What stands beside an answer that is not yes: rows that would do where the recorded ones do not, the least that must be
 * fixed, and the smallest sets that refuse each row. It is made for one answer and dies with it; nothing of it is the
 * record.
 */
import type { Mel } from '#mel';
import { compareBounds } from '../bounds.js';
import { judge } from '../judge.js';
import { leastToFix, type LeastToFix } from '../proposal/least-to-fix.js';
import type { Proposal } from '../proposal/proposal.js';
import { propose } from '../proposal/propose.js';
import { situationUnder } from '../proposal/rows-of-defect.js';
import { whyRefused, type RefusedOption } from '../proposal/why-refused.js';
import type { Situation } from '../situation.js';
import type { Verdict } from '../verdict.js';

/** Rows under which the answer would be better than under the recorded ones. */
export interface BetterRows extends Pick<Proposal, 'rows' | 'shownBest'> {
  answer: Pick<
    Verdict,
    'verdict' | 'words' | 'reasons' | 'work' | 'workMinutes' | 'earliestOffBlockAt' | 'lateMinutes'
  >;
}

export interface WhatHelps {
  /** Null where no rows give a better answer. */
  betterRows: BetterRows | null;
  /** Null unless the aircraft may not fly, whatever rows it takes. */
  leastToFix: LeastToFix | null;
  /** Every row that no choice of the other rows makes usable, each with all smallest sets that refuse it. */
  whyRefused: RefusedOption[];
}

const NOTHING_TO_HELP = new Set<Verdict['verdict']>(['nothing-open', 'may-fly']);

/** `verdict` is the answer to the same situation. Throws as `propose` does. */
export async function whatHelps(mel: Mel, situation: Situation, verdict: Verdict): Promise<WhatHelps> {
  if (NOTHING_TO_HELP.has(verdict.verdict)) {
    return { betterRows: null, leastToFix: null, whyRefused: whyRefused(mel, situation) };
  }
  const proposal = await propose(mel, situation);
  const grounded = verdict.verdict === 'may-not-fly' && proposal.verdict.verdict === 'may-not-fly';
  return {
    betterRows: isBetter(proposal.verdict, verdict) ? betterRows(proposal) : null,
    leastToFix: grounded ? leastToFix(mel, situation) : null,
    whyRefused: whyRefused(mel, situation),
  };
}

export interface UnderRows {
  verdict: Verdict;
  /** With the rows that the verdict is about. */
  situation: Situation;
}

/**
 * Under the recorded rows; where a defect has none yet, under the best rows there are, so that signing them is work.
 * Throws as `propose` does.
 */
export async function judgeOrPropose(mel: Mel, situation: Situation): Promise<UnderRows> {
  const lacksRow = situation.defects.some(({ entry, row, basis }) => entry !== null && row === null && !basis);
  if (!lacksRow) return { verdict: await judge(mel, situation), situation };
  const { verdict, rows } = await propose(mel, situation);
  return { verdict, situation: situationUnder(situation, new Map(rows.map(({ defect, row }) => [defect, row]))) };
}

function isBetter(one: Verdict, than: Verdict): boolean {
  return (compareBounds(one.lo, than.lo) || compareBounds(one.hi, than.hi)) > 0;
}

function betterRows({ verdict, rows, shownBest }: Proposal): BetterRows {
  const { words, reasons, work, workMinutes, earliestOffBlockAt, lateMinutes } = verdict;
  const answer = { verdict: verdict.verdict, words, reasons, work, workMinutes, earliestOffBlockAt, lateMinutes };
  return { answer, rows, shownBest };
}
