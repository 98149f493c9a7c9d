/** What a concurrence is to, member by member: the name of a document says nothing of the limit that somebody typed. */
import type { DefectLife } from '#deferrals';
import { canonicalText } from '#record';
import type { DeferBody } from './bodies.js';
import { basisAsked } from './deferral-check.js';

/** Which units on which basis; every member a value that JSON holds. */
export type ConcurredTo = Record<string, unknown>;

/** @throws Problem `invalid-input` where the start of a count is stated by halves */
export function concurredTo(
  body: Pick<DeferBody, 'row' | 'document' | 'item' | 'start'>,
  life: DefectLife,
): ConcurredTo {
  const { entry, units } = body.item ?? life.item ?? { entry: null, units: [] };
  return { entry, units: [...units].sort(), ...basisAsked(body) };
}

/** What reads otherwise: `limit: "2 mm", not "20 mm"`; none where both are the same. */
export function differing(given: ConcurredTo, asked: ConcurredTo): string[] {
  return [...new Set([...Object.keys(given), ...Object.keys(asked)])].flatMap((member) => {
    // The database keeps members in an order of its own.
    const [theirs, ours] = [given[member], asked[member]].map((value) => canonicalText(value ?? null));
    return theirs === ours ? [] : [`${member}: ${theirs}, not ${ours}`];
  });
}
