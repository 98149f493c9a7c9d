/**
 * Another unit of the same entry, under the row that was signed: it must be installed here, not be down already, and count
 * by the same interval. Another interval is another row's business. ORO.MLR.105; M.A.403(c); 14 CFR 121.563.
 */
import type { CorrectionAsked } from '../acts.js';
import type { RowOffered } from '../context.js';
import type { DefectLife } from '../defect-life.js';
import { intervalsFor } from '../deferring/choose-basis.js';
import { noEngineCounted } from '../deferring/no-engine-counted.js';
import { notDownAlready } from '../deferring/not-down-already.js';
import { Refusal } from '../refusal.js';
import { asCorrected, withDetail } from './as-corrected.js';
import { unitsWith } from './unit-now.js';

export interface UnitOffered {
  /** The row in force, as the MEL in force offers it; null when it no longer does. */
  offered: RowOffered | null;
  /** The units that are installed for the entry on this aircraft. */
  installed: readonly string[];
  /** The other defects of the aircraft: no unit is down twice. */
  others: readonly DefectLife[];
}

type Said = Pick<CorrectionAsked, 'act' | 'field' | 'part' | 'now'>;

export function admitUnit(life: DefectLife, said: Said, given: UnitOffered | undefined): void {
  const { defect, acts } = life;
  const written = acts.find(({ id }) => id === said.act);
  const reads = written && withDetail(asCorrected(written, acts), said);
  if (reads?.kind !== 'deferred' && reads?.kind !== 'row-changed') return;
  const { basis } = reads;
  if (basis.kind !== 'mel-row') return;
  noEngineCounted(life, said.now);
  const item = { ...reads.item, units: unitsWith(life, said) };
  const { offered = null, installed = [], others = [] } = given ?? {};
  const unit = said.now;
  if (!installed.includes(unit)) {
    throw new Refusal('unit-not-installed', { unit, entry: basis.entry, installed });
  }
  if (isTwice(unit, item.units) || isTwice(unit, reads.item.units)) {
    throw new Refusal('swap-among-failed', { unit, defect, units: item.units });
  }
  if (life.closed === null) notDownAlready(defect, item, others);
  const now = offered === null ? null : intervalsFor(offered, item.units);
  if (now === null || now.join('; ') !== basis.intervals.join('; ')) {
    const other = now ?? 'nothing, since the MEL in force no longer offers it';
    throw new Refusal('interval-of-another-unit', { unit, defect, other, signed: basis.intervals });
  }
}

const isTwice = (unit: string, units: readonly string[]): boolean => units.filter((one) => one === unit).length > 1;
