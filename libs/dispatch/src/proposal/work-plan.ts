/**
 * Outstanding work as an ordered list, with when the flight could leave by it.
 *
 * The model, which the plan states: each role is one person who does one thing after the other, and different roles work
 * side by side. A piece of work waits for what it needs: work that a condition of its row asks for; a placard for the (M)
 * of its row; an (O) and the signature of a row for the (M) and the placard.
 */
import { leavesOf, type Mel } from '#mel';
import { inUtc, millisOf, plusMinutes } from '../frame/moment.js';
import type { Situation } from '../situation.js';
import { byCode } from '../units/unit.js';
import type { WorkStep, WorkToDo } from '../verdict.js';

export interface WorkPlan {
  steps: WorkStep[];
  model: string;
  /** Minutes until all is done; null when the MEL gives no figure for some of it. */
  minutes: number | null;
  plannedOffBlockAt: string | null;
  /** ISO 8601 UTC; null when it cannot be computed. */
  earliestOffBlockAt: string | null;
  lateMinutes: number | null;
}

const MODEL = 'one person for each role, one thing after the other; different roles work side by side';

export function workPlan(mel: Mel, situation: Situation, { work: works }: { work: readonly WorkToDo[] }): WorkPlan {
  const order = inOrder(works, (work) => works.filter((other) => waitsFor(mel, work, other)));
  const steps: WorkStep[] = [];
  for (const [at, { work, needs }] of order.entries()) {
    const before = needs.map((one) => order.findIndex((other) => other.work === one)).sort((a, b) => a - b);
    const own = steps.filter((step) => step.by === work.by);
    const startsAfter = latest([...before.map((index) => steps[index]!), ...own]);
    const endsAfter = startsAfter === null || work.minutes === null ? null : startsAfter + work.minutes;
    steps.push({ ...work, step: at + 1, needs: before.map((index) => index + 1), startsAfter, endsAfter });
  }
  return { steps, model: MODEL, ...offBlock(situation, latest(steps)) };
}

function latest(steps: readonly WorkStep[]): number | null {
  return steps.reduce<number | null>(
    (end, { endsAfter }) => (end === null || endsAfter === null ? null : Math.max(end, endsAfter)),
    0,
  );
}

function offBlock({ at, flight }: Situation, minutes: number | null): Omit<WorkPlan, 'steps' | 'model'> {
  const plannedOffBlockAt = flight === null ? null : inUtc('flight.offBlockAt', flight.offBlockAt);
  if (plannedOffBlockAt === null || minutes === null) {
    return { minutes, plannedOffBlockAt, earliestOffBlockAt: null, lateMinutes: null };
  }
  const ready = plusMinutes('at', at, minutes);
  const late = (millisOf('at', ready) - millisOf('flight.offBlockAt', plannedOffBlockAt)) / 60_000;
  return late > 0
    ? { minutes, plannedOffBlockAt, earliestOffBlockAt: ready, lateMinutes: Math.ceil(late) }
    : { minutes, plannedOffBlockAt, earliestOffBlockAt: plannedOffBlockAt, lateMinutes: 0 };
}

/** Each as soon as all it waits for is done, of those the first as listed. What waits for itself in a circle comes last. */
function inOrder(
  works: readonly WorkToDo[],
  needsOf: (work: WorkToDo) => WorkToDo[],
): { work: WorkToDo; needs: WorkToDo[] }[] {
  const left = works.map((work) => ({ work, needs: needsOf(work) }));
  const done: { work: WorkToDo; needs: WorkToDo[] }[] = [];
  while (left.length > 0) {
    const isDone = (work: WorkToDo): boolean => done.some((one) => one.work === work);
    const ready = left.findIndex(({ needs }) => needs.every(isDone));
    const [next] = left.splice(Math.max(ready, 0), 1);
    if (next !== undefined) done.push({ work: next.work, needs: next.needs.filter(isDone) });
  }
  return done;
}

function waitsFor(mel: Mel, work: WorkToDo, other: WorkToDo): boolean {
  if (work === other) return false;
  const [own, before] = [parts(work), parts(other)];
  if (own.row === before.row && work.defect === other.defect && rank(mel, before) < rank(mel, own)) return true;
  return asksFor(mel, own.row).includes(other.work);
}

interface Parts {
  row: string;
  id: string;
}

function parts({ work }: WorkToDo): Parts {
  const at = work.lastIndexOf('/');
  return { row: work.slice(0, at), id: work.slice(at + 1) };
}

/** (M), then the placard, then (O) and the signature. */
function rank(mel: Mel, { row, id }: Parts): number {
  if (id === 'placard') return 1;
  const isOperating = rowsOf(mel, row).some(({ procedures = [] }) =>
    procedures.some((one) => one.id === id && one.kind === 'O'),
  );
  return id === 'signature' || isOperating ? 2 : 0;
}

/** Work that a condition of the row asks for. */
function asksFor(mel: Mel, row: string): string[] {
  const works = rowsOf(mel, row)
    .flatMap((one) => leavesOf(one))
    .flatMap(({ params }) => params?.work ?? []);
  return [...new Set(works)].sort(byCode);
}

function rowsOf(mel: Mel, key: string) {
  const [entry = '', id] = key.split('/');
  const rows = mel.entry(entry)?.subEntries.flatMap((subEntry) => subEntry.rows) ?? [];
  return rows.filter((row) => row.id === id);
}
