/**
 * A proposal where a person's answer was given on certain items and rows, on drawn MELs: what is certain, what is possible
 * and the rows (rule 8) are those of judging every choice of rows by itself, one after the other. An answer may hold under
 * one choice and be asked again under another, for the combination and for a row's own condition alike.
 */
import { expect, it } from 'vitest';
import type { Mel } from '#mel';
import { STATIONS, withGivenOn } from '../../../../tests/cases/given-on.draw.js';
import { drawCases } from '../../../../tests/cases/verdicts.draw.js';
import { Dice } from '../../../../tests/support/dice.js';
import { entry, melOf, situationOf } from '../../../../tests/support/small-mel.js';
import { workOf } from '../answer/work-list.js';
import { BOUNDS, highest, lowest } from '../bounds.js';
import { judgeChoice, rowsFor, type Choice, type JudgedChoice } from '../choice.js';
import { closureOf } from '../compiled/closures-of-mel.js';
import { Frame } from '../frame/frame.js';
import { judgeGates } from '../gates.js';
import type { RecordedJudgement, Situation } from '../situation.js';
import { Fitted } from '../units/fitted.js';
import { readingsOf, wholeReadings } from '../units/readings.js';
import { byCode, unitKey } from '../units/unit.js';
import { boundsOf } from './bounds-of.js';
import { leastToFix, withoutDefects } from './least-to-fix.js';
import { propose } from './propose.js';
import { rowsOfDefect, situationUnder } from './rows-of-defect.js';

const [FIRST, LAST] = [1, 75];

interface Weighed {
  lo: number;
  hi: number;
  /** Rows changed, work without a figure, minutes. */
  cost: number[];
  /** By place, with the row. */
  list: [place: string, row: string][];
  recorded: Choice['recorded'];
}

async function everyChoice(mel: Mel, situation: Situation): Promise<Weighed[]> {
  const fitted = new Fitted(mel, situation.aircraft);
  let some: [string, string | null][][] = [[]];
  for (const defect of situation.defects)
    some = some.flatMap((one) => rowsOfDefect(defect, fitted).map((row) => [...one, [defect.id, row]] as typeof one));
  const found: Weighed[] = [];
  for (const recorded of some.map((one) => new Map(one))) {
    const frame = new Frame(mel, situationUnder(situation, recorded), closureOf);
    const wholes = wholeReadings(frame.defects.map((one) => readingsOf(one, one.row, frame.fitted))) ?? [];
    const waiting: Choice[] = [{ recorded, considered: new Map() }];
    for (let choice = waiting.pop(); choice !== undefined; choice = waiting.pop()) {
      const judged = await judgeChoice(frame, wholes, choice, judgeGates(frame));
      const [next] = judged.rowless;
      if (next === undefined) found.push(weighed(frame, judged));
      else
        for (const row of rowsFor(frame, next))
          waiting.push({ recorded, considered: new Map([...choice.considered, [unitKey(next), row]]) });
    }
  }
  return found;
}

function weighed(frame: Frame, judged: JudgedChoice): Weighed {
  const changes = frame.defects.filter(({ signed, row, basis }) => basis === undefined && row !== null && !signed);
  const minutes = workOf(judged).map((one) => one.minutes);
  const timed = minutes.filter((one) => one !== null);
  const list = judged.groups.flatMap(({ items: [first] }): Weighed['list'] => {
    const { defect, row, unit, entry } = first!.item;
    if (defect === null && row === null) return [];
    const place = [defect?.entry ?? entry?.number ?? '', defect?.units.join('+') ?? unit, defect?.id ?? ''];
    return [[place.join('\n'), (defect === null ? row?.id : judged.choice.recorded.get(defect.id)) ?? '']];
  });
  list.sort(([a], [b]) => byCode(a, b));
  const cost = [changes.length, minutes.length - timed.length, timed.reduce((all, one) => all + one, 0)];
  const { recorded } = judged.choice;
  return { lo: BOUNDS.indexOf(lowest(judged)), hi: BOUNDS.indexOf(highest(judged)), cost, list, recorded };
}

const mostOf = (all: readonly Weighed[], of: 'lo' | 'hi'): number => Math.max(...all.map((one) => one[of]));

/** By rule 8: the least cost, then the smallest list of rows. */
function firstOf(all: readonly Weighed[]): Weighed {
  const [lo, hi] = [mostOf(all, 'lo'), mostOf(all, 'hi')];
  const enough = all.filter((one) => (lo > 0 ? one.lo >= lo : one.hi >= Math.min(hi, 1)));
  const byCost = (a: Weighed, b: Weighed) => a.cost.map((cost, at) => cost - b.cost[at]!).find((one) => one !== 0);
  return enough.sort((a, b) => byCost(a, b) ?? byList(a.list, b.list))[0]!;
}

function byList(a: Weighed['list'], b: Weighed['list']): number {
  for (const [at, [place, row]] of a.entries()) {
    const other = b[at];
    if (other === undefined) return 1;
    const order = byCode(place, other[0]) || byCode(row, other[1]);
    if (order !== 0) return order;
  }
  return a.length - b.length;
}

const anyItem = ({ givenOn: _, ...one }: RecordedJudgement): RecordedJudgement => one;
const isOnRows = ({ judgement }: RecordedJudgement): boolean => judgement !== 'combination';

function* drawn() {
  for (let seed = FIRST; seed <= LAST; seed++) {
    const dice = new Dice(seed + 9_000);
    for (const { mel, situation } of drawCases(seed, 4)) {
      const given = withGivenOn(dice, mel, situation);
      const route = { from: dice.of(STATIONS), to: 'Saltby' };
      const flight = given.flight === null ? null : { ...given.flight, ...route };
      yield { seed: `seed ${seed}`, mel, situation: { ...given, flight } };
    }
  }
}

it('a proposal is the best of every choice judged by itself where answers were given on certain items', async () => {
  const seen = { certain: 0, open: 0, changed: 0, turnsOnItems: 0, turnsOnRows: 0 };
  for (const { seed, mel, situation } of drawn()) {
    const all = await everyChoice(mel, situation);
    const bounds = { lo: BOUNDS[mostOf(all, 'lo')], hi: BOUNDS[mostOf(all, 'hi')] };
    const { verdict, rows, shownBest } = await propose(mel, situation);
    expect({ lo: verdict.lo, hi: verdict.hi, shownBest }, seed).toEqual({ ...bounds, shownBest: true });
    expect(boundsOf(mel, situation), seed).toMatchObject({ ...bounds, isWhole: true });
    expect(new Map(rows.map(({ defect, row }) => [defect, row])), seed).toEqual(firstOf(all).recorded);
    seen[bounds.lo === 'may-not-fly' ? 'open' : 'certain'] += 1;
    if (rows.some(({ isChange }) => isChange)) seen.changed += 1;
    const turnsOn = (which: (one: RecordedJudgement) => boolean): boolean => {
      const judgements = situation.judgements.map((one) => (which(one) ? anyItem(one) : one));
      const { lo, hi } = boundsOf(mel, { ...situation, judgements });
      return lo !== bounds.lo || hi !== bounds.hi;
    };
    if (turnsOn(() => true)) seen.turnsOnItems += 1;
    if (turnsOn(isOnRows)) seen.turnsOnRows += 1;
  }
  expect(Math.min(...Object.values(seen)), JSON.stringify(seen)).toBeGreaterThan(10);
});

it('least to fix is every smallest set of defects without which it may fly, by its bounds', () => {
  let repairs = 0;
  for (const { seed, mel, situation } of drawn()) {
    const ids = situation.defects.map(({ id }) => id);
    let sets: string[][] = [[]];
    for (const id of ids) sets = [...sets, ...sets.map((one) => [...one, id])];
    const helping = sets.filter((one) => boundsOf(mel, withoutDefects(situation, new Set(one))).lo !== 'may-not-fly');
    const smallest = helping.filter(
      (one) => !helping.some((other) => other.length < one.length && other.every((id) => one.includes(id))),
    );
    const expected = smallest.filter((one) => one.length > 0).map((one) => [...one].sort(byCode).join());
    const found = leastToFix(mel, situation).repairs.map(({ defects }) => defects.join());
    expect(found.sort(byCode), seed).toEqual(expected.sort(byCode));
    repairs += found.length;
  }
  expect(repairs).toBeGreaterThan(50);
});

it('more rows that decide of an answer than are looked at leave it not settled, never refused', async () => {
  const numbers = ['a', 'b', 'c', 'd', 'e', 'f', 'g'];
  const mel = melOf(...numbers.map((one) => entry(one, [{}, {}])));
  const open = (count: number): Situation => {
    const situation = situationOf(numbers.slice(0, count).map((one) => ({ entry: one, row: '1' })));
    const items = situation.defects.map(({ id }) => ({ defect: id, row: '2' }));
    const givenOn = { items, flights: [] };
    const by = { by: 'Ben Holt', role: 'maintenance-control', at: '2026-03-10T05:00Z' } as const;
    const judgements = [{ judgement: 'combination', accepted: true, ...by, givenOn }];
    return { ...situation, judgements, settings: { ...situation.settings, combinationNeedsAcceptance: true } };
  };
  const few = await propose(mel, open(6));
  expect([few.verdict.verdict, few.shownBest]).toEqual(['after-work', true]);
  expect(few.rows.map(({ row }) => row)).toEqual(['2', '2', '2', '2', '2', '2']);
  const many = await propose(mel, open(7));
  expect([many.verdict.verdict, many.shownBest, many.reason]).toEqual(['not-settled', false, 'budget']);
  expect(boundsOf(mel, open(7))).toMatchObject({ verdict: 'not-settled', isWhole: false });
});
