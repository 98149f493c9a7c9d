/** An answer that rests on a document of an authority names it: without it the aircraft may not fly this flight. */
import type { JudgedChoice } from '../choice.js';
import { VERDICT_WORDS, type VerdictCode } from '../verdict.js';

export function documentsOf(choice: JudgedChoice | null): string[] {
  const items = choice?.groups.flatMap((group) => group.items) ?? [];
  const named = items.flatMap(({ answer }) => answer.conditions.flatMap(({ onlyUnder }) => onlyUnder ?? []));
  return [...new Set(named)].sort();
}

/** e.g. "may fly only under permit PF-12", "may fly after work, only under permit PF-12". */
export function wordsOf(verdict: VerdictCode, documents: readonly string[]): string {
  const words = VERDICT_WORDS[verdict];
  if (documents.length === 0) return words;
  const under = `only under ${documents.join(' and ')}`;
  if (verdict === 'may-fly') return `${words} ${under}`;
  return verdict === 'after-work' ? `${words}, ${under}` : words;
}
