/**
 * The smallest changes of different kinds that save the broken flight only together: fix this and change the row of that,
 * send somebody and leave a flight out. Looked for where no single change does; each is flown again whole.
 */
import { byCode } from '../../units/unit.js';
import type { JudgedPlan } from '../best-plan.js';
import type { Saver, Stop } from '../next-flights.js';
import { minutesFor } from './change-row.js';
import { movesOf, type Move } from './moves.js';
import { flyAgain, sayStops, stopAt, stopsBefore, type Saving } from './saving.js';

/** More changes together than that are not gone through. */
const MOST_TOGETHER = 3;

/** `alone` are the ways to save it that are of one kind. */
export async function severalChanges(saving: Saving, alone: readonly Saver[]): Promise<Saver[]> {
  const moves = movesOf(saving);
  const found: Saver[] = [];
  for (let size = 2; size <= MOST_TOGETHER; size++) {
    if ([...alone, ...found].some((one) => one.size < size)) return found;
    for (const set of together(moves, size)) {
      if (isOfOneKind(set) || clashes(set)) continue;
      const saver = await trying(saving, set);
      if (saver !== null) found.push(saver);
      if (saving.budget.left <= 0) return found;
    }
  }
  return found;
}

/** Sets of moves whose changes add up to so many. */
function* together(moves: readonly Move[], size: number): Generator<Move[]> {
  if (size === 0) yield [];
  if (size <= 0) return;
  for (const [at, move] of moves.entries())
    for (const rest of together(moves.slice(at + 1), size - move.size)) yield [move, ...rest];
}

/** Those are looked for by themselves, but for rows of several defects. */
function isOfOneKind([first, ...rest]: readonly Move[]): boolean {
  return first?.kind !== 'change-row' && rest.every(({ kind }) => kind === first?.kind);
}

/** Two things done with one defect, or flights left out in two runs. */
function clashes(set: readonly Move[]): boolean {
  const defects = set.flatMap((move) => move.defects ?? []);
  return new Set(defects).size < defects.length || set.filter(({ kind }) => kind === 'leave-out').length > 1;
}

async function trying(saving: Saving, set: readonly Move[]): Promise<Saver | null> {
  const flights = set.reduce((all, { planned }) => planned?.(all) ?? all, saving.flights);
  if (set.every(({ atStop }) => atStop === undefined)) {
    const flown = await flyAgain(saving, (before) => before, flights);
    return flown === null ? null : saverOf(saving, set, [], flown.p, null);
  }
  const stops: Stop[] = [];
  let keeps = 0;
  let first: { flown: JudgedPlan; index: number } | null = null;
  for (const index of stopsFor(saving, set)) {
    const stop = saving.flights[index]!;
    if (!flights.some(({ id }) => id === stop.id)) continue;
    const flown = await flyAgain(
      saving,
      (before, at) =>
        flights[at]?.id === stop.id
          ? set.reduce((changed, move) => move.atStop?.(changed, stop) ?? changed, before)
          : before,
      flights,
    );
    if (flown === null) continue;
    first ??= { flown, index: flights.findIndex(({ id }) => id === stop.id) };
    stops.push(stopAt(saving, index, minutesOf(set, first)));
    keeps = Math.max(keeps, flown.p);
  }
  return first === null ? null : saverOf(saving, set, stops, keeps, first);
}

/** Where somebody is, or is sent; and where each of the changes counts. */
function stopsFor(saving: Saving, set: readonly Move[]): number[] {
  const { plan } = saving;
  const usual = stopsBefore(saving, plan.p);
  const isSent = set.some(({ kind }) => kind === 'send-person');
  const all = isSent && !usual.includes(plan.p) ? [plan.p, ...usual] : usual;
  return all.filter((index) =>
    set.every(({ countsAt }) => countsAt?.(plan.legs[index]!.frame.situation, index === plan.p) ?? true),
  );
}

function minutesOf(set: readonly Move[], first: { flown: JudgedPlan; index: number } | null): number | null {
  const all = set.map((move) =>
    move.kind === 'change-row' && first !== null
      ? minutesFor(first.flown, first.index, move.defects?.[0] ?? '')
      : move.minutes,
  );
  return all.reduce((sum, one) => (sum === null || one === null ? null : sum + one), 0);
}

function saverOf(
  saving: Saving,
  set: readonly Move[],
  stops: Stop[],
  keeps: number,
  first: { flown: JudgedPlan; index: number } | null,
): Saver {
  const here = set.filter(({ atStop }) => atStop !== undefined).map(({ words }) => words);
  const elsewhere = set.filter(({ atStop }) => atStop === undefined).map(({ words }) => words);
  const done = here.length === 0 ? [] : [`${here.join(' and ')}, ${sayStops(saving, stops)}`];
  const text = [...elsewhere, ...done].join('; and ');
  const flights = set.flatMap(({ leaves = [] }) => leaves.map(({ id }) => id));
  const defects = set.flatMap((move) => move.defects ?? []).sort(byCode);
  return {
    kind: 'several',
    parts: set.map(({ kind, words }) => ({ kind, words })),
    text: `${text.charAt(0).toUpperCase()}${text.slice(1)}.`,
    size: set.reduce((sum, { size }) => sum + size, 0),
    minutes: minutesOf(set, first),
    stops,
    ...(defects.length === 0 ? {} : { defects }),
    ...(flights.length === 0 ? {} : { flights }),
    keeps,
  };
}
