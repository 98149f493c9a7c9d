/** What an open item stands on when it is no row of the MEL: another basis with its own conditions, or nothing. */
import { clockOf } from '../frame/counting.js';
import type { Frame } from '../frame/frame.js';
import type { TreeOf } from '../frame/trees.js';
import { FF, FT, TT } from '../kleene.js';
import type { OpenDefect, OtherBasis } from '../situation.js';
import { judged, type Item, type Judged } from './item.js';
import { judgedProviso } from './proviso.js';
import { withinDeadline } from './interval.js';

const BASIS_WORDS: Record<OtherBasis['kind'], string> = {
  cdl: 'configuration deviation list',
  nef: 'non-essential equipment and furnishings programme',
  'approved-data': 'limit in approved data',
  'design-approval': 'design approval',
  permit: 'permit to fly',
  'authority-document': 'document of the authority',
};

/** The recorded basis, signed or proposed, the interval it gives, and each of its conditions. */
export function otherBasis(defect: OpenDefect, basis: OtherBasis, frame: Frame, treeOf: TreeOf): Judged[] {
  const words = `${BASIS_WORDS[basis.kind]} ${basis.reference}`;
  const id = `${defect.id}/basis`;
  const text = `${words}: ${basis.limit}`;
  const first = defect.signed
    ? judged('recorded-basis', id, text, TT, `it stands on ${words}`)
    : judged('recorded-basis', id, text, FT, `${words} is proposed and not yet signed`, {
        work: {
          work: `${defect.id}/basis/signature`,
          text: `Sign ${words} for defect ${defect.id}`,
          minutes: 0,
          by: 'technician',
          needsPersonAtStation: false,
          defect: defect.id,
        },
      });
  const own = basis.conditions.map((proviso) => judgedProviso(proviso, `${id}/${proviso.id}`, frame, treeOf));
  return [first, ...intervalOf(defect, basis, words, frame), ...own];
}

/** The basis may give an interval, a last instant, or neither. */
function intervalOf(defect: OpenDefect, { interval }: OtherBasis, words: string, frame: Frame): Judged[] {
  const { recordedAt, deadline } = defect;
  if (interval === undefined && deadline === undefined) return [];
  const { tzdb, settings } = frame.situation;
  const clock =
    interval === undefined ? null : clockOf({ category: 'A', interval, recordedAt, base: settings.base, tzdb });
  const text = `${interval ?? 'the time'} that ${words} gives, recorded ${recordedAt}`;
  return [withinDeadline({ id: `${defect.id}/interval`, text, name: words, clock }, defect, frame)];
}

/** No row, no other basis: nothing allows this item to be inoperative. */
export function noBasis({ entry, unit, defect, cause, subEntry, configurationKnown }: Item): Judged {
  const id = `${entry?.number ?? defect?.id ?? ''}/${unit}/basis`;
  const name = entry === null ? `defect ${defect?.id ?? ''}` : `${entry.title} ${unit}`;
  return judged('recorded-basis', id, `a row or another basis stands for ${name}`, FF, why());

  function why(): string {
    if (cause.kind === 'considered-inoperative')
      return `${name} is considered inoperative and its entry offers no relief`;
    if (defect?.row === null || defect === null) return `no row and no other basis is recorded for ${name}`;
    if (subEntry === null) return `${name} is not in this MEL for this aircraft, so it must work`;
    const where = configurationKnown ? 'this aircraft' : `sub-entry ${subEntry.id}`;
    return `the entry offers no row ${defect.row} to ${where}`;
  }
}
