/**
 * Which corrections still wait for a second look after an act. One ends when it is made or stays as written; and when what
 * it pointed at is no more: the row was changed, or the part was swapped or ruled out. 145.A.48; common practice, no source
 * for the ending.
 */
import type { Act, Corrected, CorrectionAsked } from '../acts.js';
import type { DefectLife } from '../defect-life.js';
import { unitNow } from './unit-now.js';

type Before = Pick<DefectLife, 'asked' | 'acts'>;

export function askedAfter({ asked, acts }: Before, act: Act): CorrectionAsked[] {
  return asked.filter((one) => stillWaits(one, acts, act));
}

function stillWaits(one: CorrectionAsked, acts: readonly Act[], act: Act): boolean {
  switch (act.kind) {
    case 'correction-asked':
    case 'corrected':
      return !isOfTheSame(one, act);
    case 'stays-as-written':
      return one.id !== act.asked;
    case 'row-changed':
      return one.field !== 'unit' && one.field !== 'limit';
    case 'transferred':
    case 'identified':
      return one.field !== 'unit' || unitNow({ acts: [...acts, act] }, one) !== null;
    default:
      return true;
  }
}

/** The corrections that waited and ended with this act of a history, since what they pointed at was no more. */
export function askingsEndedBy(act: Act, history: readonly Act[]): CorrectionAsked[] {
  if (act.kind !== 'row-changed' && act.kind !== 'transferred' && act.kind !== 'identified') return [];
  const acts = history.slice(0, history.indexOf(act));
  const asked = acts.reduce<CorrectionAsked[]>((waiting, one, index) => {
    const left = askedAfter({ asked: waiting, acts: acts.slice(0, index) }, one);
    return one.kind === 'correction-asked' ? [...left, one] : left;
  }, []);
  const left = askedAfter({ asked, acts }, act);
  return asked.filter((one) => !left.includes(one));
}

type PointsAt = Pick<Corrected, 'act' | 'field' | 'item' | 'part'>;

/** A thing left on the aircraft waits as a whole: one look sees its place and its number. */
function isOfTheSame(one: PointsAt, other: PointsAt): boolean {
  if (one.item !== null || other.item !== null) return one.item === other.item;
  return one.act === other.act && one.field === other.field && (one.part ?? 0) === (other.part ?? 0);
}
