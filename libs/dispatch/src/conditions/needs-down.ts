import { allOf } from '../kleene.js';
import { judged, partOf, type Rule } from './item.js';

/** A symmetrical partner must be inoperative too. */
export const needsDown: Rule = (item, frame, state) =>
  (item.row.needsDown ?? []).map((ref) => {
    const units = frame.fitted.unitsOf(ref);
    const truth = allOf(units.map((unit) => state.isDown(unit)));
    const name = `${frame.mel.entry(ref.entry)?.title ?? ref.entry} ${units.map(({ unit }) => unit).join(', ')}`;
    const says = { T: 'is inoperative', F: 'is not inoperative', U: 'is perhaps inoperative' }[truth];
    return judged(
      'needs-down',
      partOf(item, `down ${ref.entry} ${(ref.units ?? []).join('+')}`.trim()),
      `${name} is inoperative too`,
      { now: truth, after: truth },
      `${name} ${says}`,
    );
  });
