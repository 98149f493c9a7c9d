/**
 * Which question to ask next (rule 11). A plan of questions is made for one not-settled answer and dies with the first
 * reply: it is then made anew, so that only what still matters is asked.
 */
import type { Scalar } from '../evaluate/marker.js';
import type { Question, VerdictCode } from '../verdict.js';

/** Replies that make the same difference to every condition in use. */
export interface Reply {
  /** e.g. "forecast or known", "at most 120", "yes". */
  words: string;
  /** One of them. */
  value: Scalar;
  /** How likely it is taken to be; all replies of a question together are 1. */
  weight: number;
}

export interface AskedQuestion extends Question {
  replies: Reply[];
  /** How likely the reply settles the answer at once. */
  settles: number;
}

/** What is asked, and what then, reply by reply. */
export type QuestionNode =
  | { ask: string; then: { words: string; value: Scalar; weight: number; next: QuestionNode }[] }
  | { verdict: VerdictCode };

/**
 * `least-expected`: no other order of questions needs fewer on average. `most-likely-to-settle`: too many facts are open
 * to compare all orders. `listed`: the facts are listed without an order, since what follows from a reply is not known.
 */
export type QuestionMethod = 'least-expected' | 'most-likely-to-settle' | 'listed' | 'nothing-to-ask';

export interface QuestionPlan {
  verdict: VerdictCode;
  method: QuestionMethod;
  /** How the order was found, and what it takes for granted. */
  model: string;
  /** Questions expected until the answer is settled; null where that was not computed. */
  expected: number | null;
  /** Those on which the answer still depends, the one to ask first in front. */
  questions: AskedQuestion[];
  tree: QuestionNode | null;
}

/** The likelihoods that the operator's content gives to the values of a fact; all replies are alike where it gives none. */
export type WeightOf = (fact: string, value: Scalar) => number | undefined;
