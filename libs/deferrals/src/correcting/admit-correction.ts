/** What is asked of every correction, whether it is signed at once or waits for a second person to look. */
import type { Act, Corrected, CorrectableField, WhenFound } from '../acts.js';
import type { DefectLife } from '../defect-life.js';
import { before } from '../instant.js';
import { admitBasis } from '../deferring/admit-basis.js';
import type { Privilege } from '../people.js';
import { Refusal } from '../refusal.js';
import { admitTimes } from '../writing-up/admit-times.js';
import { needText } from '../writing-up/need-text.js';
import { asCorrected, withDetail } from './as-corrected.js';
import { detailOf, privilegeToCorrect } from './details.js';
import { FIELD_WORDS } from './field-words.js';
import { entryInWords, nothingToCorrect } from './nothing-to-correct.js';
import { readsNow } from './reads-now.js';
import { unitNow } from './unit-now.js';

export interface CorrectionSaid {
  act: string;
  field: CorrectableField;
  item: string | null;
  part?: number;
  was: string | null;
  now: string;
  reason: string;
}

/** Throws Refusal `text-missing`, `correction-of-nothing`, or what would be refused if it had been written so at first. */
export function admitCorrection(life: DefectLife, said: CorrectionSaid): void {
  const { field, was, now } = said;
  needText('the reason for the correction', said.reason);
  needText('what should stand there', now);
  const reads = readsNow(life, said);
  if (reads !== was) throw readsOtherwise(life, { ...said, was: reads === undefined ? undefined : was });
  if (now === was) throw new Refusal('correction-changes-nothing', { words: FIELD_WORDS[field], now });
  if (field === 'occurredAt') admitTimes({ ...life, occurredAt: now });
  if (field === 'whenFound' && !isWhenFound(now)) {
    throw new Refusal('correction-not-one-of', { words: FIELD_WORDS[field], now, allowed: Object.keys(WHEN) });
  }
  if (field === 'unit') admitUnitNow(life, said);
  if (field === 'doneAt') admitDoneEarlier(was, now);
  if (field === 'staysOpen') admitStillSaid(life, said);
}

/** `was` is absent where nothing of the kind stands there. */
type PointsAt = Pick<Corrected, 'act' | 'field' | 'part'> & { was?: string | null | undefined };

/** Nothing stands there, or something else; or the part was moved since, and what is done then. */
export function readsOtherwise(life: DefectLife, { act, field, part, was }: PointsAt): Refusal {
  const { defect, acts, deferral, item } = life;
  const written = acts.find(({ id }) => id === act);
  const reads = written && detailOf(asCorrected(written, acts), field)?.read(asCorrected(written, acts), part ?? 0);
  if (field === 'unit' && deferral?.act === act && reads && unitNow(life, { act, part }) === null) {
    return new Refusal('unit-moved-since', { unit: reads, defect, units: item?.units ?? [] });
  }
  return nothingToCorrect({
    entry: entryInWords(written, defect),
    words: FIELD_WORDS[field],
    ...(was === undefined ? {} : { was }),
  });
}

/**
 * Done earlier it is good for less, as long as the aircraft did not leave meanwhile; see admit-none-left-between.ts, which
 * is asked when the correction is decided. Done later it would be good for longer on the word of whoever mistyped it.
 */
export function admitDoneEarlier(was: string | null, now: string): void {
  if (was !== null && before(now, was)) return;
  throw new Refusal('correction-gives-more-time', { was: was ?? 'not said', now });
}

const WHEN: Record<WhenFound, true> = { 'before-moving': true, 'own-power': true, 'after-take-off': true };

const isWhenFound = (now: string): boolean => Object.hasOwn(WHEN, now);

/** The row in force must relieve the unit that is written now. */
function admitUnitNow({ defect, acts }: DefectLife, said: CorrectionSaid): void {
  const act = acts.find(({ id }) => id === said.act);
  const reads = act && withDetail(asCorrected(act, acts), said);
  if (reads?.kind === 'deferred' || reads?.kind === 'row-changed') admitBasis(defect, reads.basis, reads.item);
}

/** A card that was stopped half-worked stays named in the release. 145.A.50(e). */
function admitStillSaid({ defect, cards }: DefectLife, { was, now }: CorrectionSaid): void {
  const titles = cards.map(({ started }) => started.card.title);
  const unsaid = titles.filter((title) => was?.includes(title) === true && !now.includes(title));
  if (unsaid.length > 0) throw new Refusal('stopped-card-not-said', { defect, cards: unsaid });
}

/** What is left on the aircraft, and what decides something: then a second person looks and signs. */
export function needsSecondLook({ acts }: DefectLife, { act, field, item }: Omit<CorrectionSaid, 'reason'>): boolean {
  const original = acts.find(({ id }) => id === act);
  return item !== null || (original !== undefined && detailOf(original, field)?.decides === true);
}

/** Who may do a thing may correct it. */
export function privilegeOfCorrection({ acts }: DefectLife, { act }: Pick<CorrectionSaid, 'act'>): Privilege {
  return privilegeToCorrect(original(acts, act));
}

const original = (acts: readonly Act[], act: string): Act | undefined => acts.find(({ id }) => id === act);
