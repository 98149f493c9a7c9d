/**
 * A second, tiny account of the same rules, with whole days and plain sets, for random histories to be held against.
 * It shares no code with the lib: what it says may be done is worked out anew.
 */
import type { RefusalCode } from '../refusals.js';

export const DAY = 1440;
export const dayOf = (minute: number): number => Math.floor(minute / DAY);

export type RowName = 'B' | 'C' | 'D' | 'A days' | 'A flights' | 'pair' | 'unit 2 only';
/** Days and flights that each row of the invented item gives. */
export const ROWS: Record<RowName, { days: number | null; flights: number | null; category: 'A' | 'B' | 'C' | 'D' }> =
  {
    B: { days: 3, flights: null, category: 'B' },
    C: { days: 10, flights: null, category: 'C' },
    D: { days: 120, flights: null, category: 'D' },
    'A days': { days: 6, flights: null, category: 'A' },
    'A flights': { days: null, flights: 2, category: 'A' },
    pair: { days: 3, flights: null, category: 'B' },
    'unit 2 only': { days: 10, flights: null, category: 'C' },
  };

export type Who = 'first' | 'second' | 'control' | 'mechanic' | 'trainee' | 'leaver';
export const LEAVES_ON_DAY = 12;

export interface ModelLimit {
  row: RowName;
  lastDay: number | null;
  flights: number | null;
}

export interface ModelWork {
  complete: boolean;
  performers: Set<Who>;
  testAsked: boolean;
  tested: boolean | null;
  inspectionAsked: boolean;
  inspected: boolean;
  restored: boolean;
  goneOver: boolean;
}

export interface ModelDefect {
  recorded: number;
  unit: '1' | '2';
  row: RowName | null;
  limits: ModelLimit[];
  usedA: boolean;
  extended: boolean;
  flights: number;
  left: string[];
  altered: boolean;
  work: ModelWork | null;
  closed: boolean;
}

export interface Model {
  minute: number;
  defects: ModelDefect[];
}

type No = RefusalCode | false;
const whatever = (...reasons: No[]): RefusalCode[] =>
  reasons.filter((reason): reason is RefusalCode => reason !== false);

/** Every reason there is against this person signing now; `full` for people who hold every privilege. */
export function againstSigner(model: Model, who: Who): RefusalCode[] {
  return whatever(
    who === 'trainee' && 'authorisation-does-not-cover',
    who === 'leaver' && model.minute >= LEAVES_ON_DAY * DAY && 'authorisation-not-valid-then',
  );
}

export const lastDayOf = ({ limits }: ModelDefect): number | null =>
  limits.reduce<number | null>(
    (least, { lastDay }) => (lastDay === null ? least : least === null ? lastDay : Math.min(least, lastDay)),
    null,
  );

const isOver = (limits: ModelLimit[], minute: number): boolean =>
  limits.some(({ lastDay }) => lastDay !== null && dayOf(minute) > lastDay);

export function limitOf(model: Model, defect: ModelDefect, row: RowName): ModelLimit {
  const { days, flights } = ROWS[row];
  const down = model.defects.filter(({ closed }) => !closed).map(({ recorded }) => recorded);
  const from = row === 'pair' ? Math.max(defect.recorded, ...down) : defect.recorded;
  return { row, lastDay: days === null ? null : dayOf(from) + days, flights };
}

/** One unit is deferred once. */
export const deferredElsewhere = (model: Model, defect: ModelDefect, unit: ModelDefect['unit']): boolean =>
  model.defects.some((other) => other !== defect && !other.closed && other.row !== null && other.unit === unit);

export function againstDeferring(model: Model, defect: ModelDefect, row: RowName | null): RefusalCode[] {
  if (row === null) return whatever(defect.row !== null && 'write-up-already-answered', 'no-basis');
  return whatever(
    deferredElsewhere(model, defect, defect.unit) && 'unit-deferred-already',
    defect.row !== null && 'write-up-already-answered',
    row === 'unit 2 only' && defect.unit === '1' && 'row-not-for-this-unit',
    isOver([limitOf(model, defect, row)], model.minute) && 'interval-over',
  );
}

export function limitsAfterChange(model: Model, defect: ModelDefect, row: RowName, causeGone: boolean): ModelLimit[] {
  const kept = causeGone ? defect.limits.filter((limit) => limit.row !== 'pair') : defect.limits;
  return [...kept, limitOf(model, defect, row)];
}

export function againstChanging(
  model: Model,
  defect: ModelDefect,
  row: RowName,
  who: Who,
  cause: ModelDefect | null,
): RefusalCode[] {
  const after = limitsAfterChange(model, defect, row, cause !== null);
  const others = model.defects.filter((other) => other !== defect);
  return whatever(
    defect.row === null && 'not-deferred',
    row === 'unit 2 only' && defect.unit === '1' && 'row-not-for-this-unit',
    cause !== null && who !== 'control' && 'control-must-sign',
    cause !== null &&
      (cause === defect || !cause.closed || others.some(({ closed }) => !closed)) &&
      'cause-not-closed',
    isOver(after, model.minute) && 'interval-over',
    after.some(({ flights }) => flights !== null && defect.flights >= flights) && 'interval-used-up',
  );
}

export function againstExtending(
  model: Model,
  defect: ModelDefect,
  asks: Who,
  grants: Who,
  outside: boolean,
): RefusalCode[] {
  return whatever(
    defect.work?.complete === true && 'rectified-not-released',
    defect.row === null && 'not-deferred',
    defect.usedA && 'category-a-not-extendable',
    defect.extended && 'second-extension',
    isOver(defect.limits, model.minute) && 'extension-after-expiry',
    asks === grants && 'same-person-granting',
    !outside && 'extension-reason-within-control',
  );
}

export function againstReleasing({ work, left, altered }: ModelDefect, who: Who, closes: boolean): RefusalCode[] {
  if (work === null) return ['no-open-work'];
  return whatever(
    closes && !work.complete && 'work-not-complete',
    closes && (work.tested === false || (work.testAsked && work.tested === null)) && 'test-not-good',
    closes && left.length > 0 && 'still-left-on-the-aircraft',
    closes && altered && !work.restored && 'not-restored',
    work.inspectionAsked && !work.inspected && 'inspection-not-done',
    !work.goneOver && 'not-generally-verified',
    who === 'mechanic' && [...work.performers].some((performer) => performer !== who) && 'only-own-work',
  );
}

export const againstAnswering = ({ row, work, left }: ModelDefect): RefusalCode[] =>
  whatever(
    row !== null && 'write-up-already-answered',
    work !== null && 'open-work',
    left.length > 0 && 'still-left-on-the-aircraft',
  );

/** May the aircraft leave now, with everything that is open on it? */
export function mayLeave({ defects, minute }: Model): boolean {
  return defects.every(
    ({ closed, row, work, limits, flights, unit }) =>
      closed ||
      (row !== null &&
        work === null &&
        !(row === 'unit 2 only' && unit === '1') &&
        !isOver(limits, minute) &&
        limits.every((limit) => limit.flights === null || flights < limit.flights)),
  );
}
