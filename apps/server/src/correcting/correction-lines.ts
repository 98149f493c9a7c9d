/** What pages and papers show of corrections: what was struck, what waits for a second look, and what could be corrected. */
import {
  type Act,
  asCorrected,
  type CorrectableField,
  type Corrected,
  type DefectLife,
  detailsOf,
  FIELD_WORDS,
  putRightOtherwise,
  readsNow,
  WORDS_OF_WRITE_UP,
} from '#deferrals';
import { asInTheLine, valueInWords } from './value-words.js';

/** What was put right in an act afterwards, in order. */
export function correctionsOf({ acts }: DefectLife, { id }: Act, base: string) {
  return acts.flatMap((one) => (one.kind === 'corrected' && one.act === id ? [correctionLine(one, base)] : []));
}

/** Everything that was put right in a defect. */
export function allCorrections({ acts }: DefectLife, base: string) {
  return acts.flatMap((one) => (one.kind === 'corrected' ? [correctionLine(one, base)] : []));
}

function correctionLine({ field, was, now, by, enteredAt, reason, secondLook }: Corrected, base: string) {
  const read = valueInWords(field, was, base);
  return {
    field: FIELD_WORDS[field],
    was: read,
    struck: read === null ? null : asInTheLine(field, read),
    now: valueInWords(field, now, base) ?? now,
    reason,
    by: by.name,
    looked: secondLook?.name ?? null,
    at: enteredAt,
  };
}

/** Corrections that wait for a second person; those of things left on the aircraft wait in its register. */
export function waitingLines({ asked, acts }: DefectLife, base: string) {
  return asked
    .filter(({ item }) => item === null)
    .map(({ id, act, field, was, now, reason, by, enteredAt }) => ({
      id,
      seq: acts.findIndex((one) => one.id === act) + 1,
      field: FIELD_WORDS[field],
      was: valueInWords(field, was, base),
      now: valueInWords(field, now, base) ?? now,
      reason,
      by: by.name,
      at: enteredAt,
    }));
}

/** What of an act a person could correct, as it reads now. */
export function correctableLines(life: DefectLife, act: Act) {
  return pointsIn(life, act).flatMap(({ field, part, many, secondLook }) => {
    const reads = readsNow(life, { act: act.id, field, item: null, part });
    const words = many > 1 ? `${FIELD_WORDS[field]} (${part + 1} of ${many})` : FIELD_WORDS[field];
    return reads === undefined ? [] : [{ field, part, words, reads, secondLook }];
  });
}

function pointsIn(
  { acts }: DefectLife,
  act: Act,
): { field: CorrectableField; part: number; many: number; secondLook: boolean }[] {
  const reads = asCorrected(act, acts);
  const words = act.kind === 'written-up' ? WORDS_OF_WRITE_UP : [];
  const details = detailsOf(reads).flatMap((detail) => {
    const many = detail.many(reads);
    const { field, decides: secondLook = false } = detail;
    return Array.from({ length: many }, (_, part) => ({ field, part, many, secondLook }));
  });
  return [...words.map((field) => ({ field, part: 0, many: 1, secondLook: false })), ...details];
}

/** What of an act no correction touches, with what to do instead. */
export function otherwiseLines(act: Act) {
  return putRightOtherwise(act).map((one) => ({ ...one }));
}
