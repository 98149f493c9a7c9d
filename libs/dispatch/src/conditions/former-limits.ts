import { departure } from '../frame/counting.js';
import { judged, partOf, type FixedRule, type Judged, type RowItem } from './item.js';
import { isAlone } from './former-row.js';

/**
 * Flights, days, hours or cycles of rows that were signed before the one in force still run out: a change of row never
 * gives a unit more than the earliest that was signed for it. The calendar ends of such rows stand in the stored deadline.
 * ORO.MLR.105; M.A.403(c).
 */
export const formerLimits: FixedRule = (item, frame): Judged[] => {
  const { defect } = item;
  const isProposed = defect?.insteadOf !== undefined;
  return (defect?.formerLimits ?? [])
    .filter(({ pair }) => !(pair && isProposed && isAlone(item, frame)))
    .map(({ clock }, at) => {
      const limits = clock.limits.filter(({ unit }) => unit !== 'calendar-days' && unit !== 'hours');
      const { answer, because } = departure({ ...clock, limits }, frame.leg, defect?.used ?? {}, frame.counting);
      const truth = TRUTH[answer];
      return judged(
        'interval',
        idOf(item, at),
        textOf(clock.interval),
        { now: truth, after: truth },
        `${because} A row signed before set this limit.`,
      );
    });
};

const TRUTH = { holds: 'T', fails: 'F', unknown: 'U' } as const;

function idOf(item: RowItem, at: number): string {
  return partOf(item, `earlier limit ${at + 1}`);
}

function textOf(interval: string): string {
  return `still inside ${interval}, which a row signed before set for this unit`;
}
