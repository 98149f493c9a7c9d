/** States of knowledge about a few open facts, and what the answer is in each. */
import type { VerdictCode } from '../verdict.js';

/** For each fact the number of the reply it got, or null while nobody has answered. */
export type Known = readonly (number | null)[];

export interface OpenQuestion {
  key: string;
  /** How likely each reply is; together 1. */
  weights: readonly number[];
}

export interface Lattice {
  facts: readonly OpenQuestion[];
  verdict(known: Known): VerdictCode;
}

export const nothingKnown = ({ facts }: Lattice): Known => facts.map(() => null);

export const isSettled = (lattice: Lattice, known: Known): boolean => lattice.verdict(known) !== 'not-settled';

export function learn(known: Known, fact: number, reply: number): Known {
  return known.with(fact, reply);
}

export function openFacts(known: Known): number[] {
  return known.flatMap((reply, fact) => (reply === null ? [fact] : []));
}

/** How likely a reply to this question settles the answer at once. */
export function settles(lattice: Lattice, known: Known, fact: number): number {
  const { weights } = lattice.facts[fact]!;
  return weights.reduce((sum, by, reply) => sum + (isSettled(lattice, learn(known, fact, reply)) ? by : 0), 0);
}

export const keyOf = (known: Known): string => known.map((reply) => reply ?? '-').join(' ');
