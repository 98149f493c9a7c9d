import type { Frame } from '../frame/frame.js';
import type { OpenDefect } from '../situation.js';
import { interval, withinDeadline } from './interval.js';
import { judged, partOf, type FixedRule, type Judged, type RowItem } from './item.js';

/**
 * A used-up or expired row is not escaped by moving to a longer one: a row that would replace the signed one stays inside
 * the interval of that one too. The operator may settle it otherwise. Once the other unit of a pair is fixed, the pair's
 * row binds no longer; control signs that. ORO.MLR.105; M.A.403(c).
 */
export const formerRow: FixedRule = (item, frame) => {
  const { defect } = item;
  if (defect?.insteadOf === undefined || frame.situation.settings.changeOfRow === 'own-window') return [];
  const { insteadOf, ...signed } = defect;
  const { rows, units } = item.subEntry;
  const former = rows.find(({ id }) => id === insteadOf);
  if (former === undefined) return storedEnd(item, insteadOf, signed, frame);
  if (former.numberRequired < units.length - 1 && isAlone(item, frame)) return [];
  return interval({ ...item, row: former, defect: signed }, frame).map((one) => asFormer(item, insteadOf, one));
};

/** A row that this aircraft's sub-entry no longer has still left a deadline behind. */
function storedEnd(item: RowItem, insteadOf: string, signed: OpenDefect, frame: Frame): Judged[] {
  if (signed.deadline === undefined) return [];
  const name = `${item.entry.title} ${item.unit}`;
  const deadline = { id: '', text: 'the deadline signed for this unit', name, clock: null };
  return [asFormer(item, insteadOf, withinDeadline(deadline, signed, frame))];
}

/** No other unit of the entry is down, so that nothing asks for a pair's row any more. */
export function isAlone({ entry, defect }: RowItem, { defects }: Frame): boolean {
  return defects.every((other) => other.entry !== entry.number || other.id === defect?.id);
}

function asFormer(item: RowItem, insteadOf: string, { answer, ...rest }: Judged): Judged {
  const id = partOf(item, `interval of row ${insteadOf}`);
  const text = `still inside row ${insteadOf}, which is signed for this unit: ${answer.text}`;
  const { now, after, because, tree, onlyUnder } = answer;
  return judged('interval', id, text, { now, after }, because, {
    ...rest,
    ...(tree === undefined ? {} : { tree }),
    ...(onlyUnder === undefined ? {} : { onlyUnder }),
  });
}
