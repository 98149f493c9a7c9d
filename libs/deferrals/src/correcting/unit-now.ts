/**
 * Which of the units that are down now a basis in force speaks of. A part that was swapped since, or is no longer among
 * those that may have failed, is not what was written down any more: no correction of that word moves it back.
 */
import type { Act, Corrected } from '../acts.js';
import type { DefectLife } from '../defect-life.js';

type PointsAt = Pick<Corrected, 'act' | 'part'>;

/** Null once the part was moved or is no longer named, and where nothing of the kind is written. */
export function unitNow({ acts }: Pick<DefectLife, 'acts'>, points: PointsAt): string | null {
  const at = acts.findIndex(({ id }) => id === points.act);
  const written = acts[at];
  if (written?.kind !== 'deferred' && written?.kind !== 'row-changed') return null;
  const first = written.item.units[points.part ?? 0] ?? null;
  return acts.slice(at + 1).reduce<string | null>((unit, act) => after(unit, act, points), first);
}

function after(unit: string | null, act: Act, { act: id, part = 0 }: PointsAt): string | null {
  if (unit === null) return null;
  switch (act.kind) {
    case 'transferred':
      return [act.fromUnit, act.toUnit].includes(unit) ? null : unit;
    case 'identified':
      return act.item.units.includes(unit) ? unit : null;
    case 'corrected':
      return act.act === id && act.field === 'unit' && (act.part ?? 0) === part ? act.now : unit;
    default:
      return unit;
  }
}

/** The units that are down, with the one of them put right that the correction points at, and no other. */
export function unitsWith(life: DefectLife, said: PointsAt & Pick<Corrected, 'now'>): string[] {
  const unit = unitNow(life, said);
  return (life.item?.units ?? []).map((one) => (one === unit ? said.now : one));
}
