/**
 * The flights ahead where a person's answer was given on certain items, rows and routes: what is found by values is what
 * flying every choice finds, on drawn MELs and plans of three flights. An answer may hold under one choice of rows and be
 * asked again under another, for the combination and for a row's own condition alike; and an answer of no, asked again,
 * lets an earlier yes count.
 */
import { expect, it } from 'vitest';
import type { Mel } from '#mel';
import { Dice } from '../../../../tests/support/dice.js';
import { drawCases } from '../../../../tests/cases/verdicts.draw.js';
import type { GivenOn, OpenDefect, PlannedFlight, RecordedJudgement, Situation } from '../situation.js';
import { stopsOf } from './at-stop.js';
import { searchByValue } from './search-by-value.js';
import { searchInFull, searchPlans, type FoundPlan } from './search-plans.js';

const AT = ['2026-03-10T04:00Z', '2026-03-10T05:00Z', '2026-03-10T06:00Z'];
/** Seeds 1 to 300 agree; among these an answer often bounds a search wrongly that takes it as it stands under no row. */
const [FIRST, LAST] = [181, 230];
const STATIONS = ['Northmere', 'Saltby'];

function drawPlan(dice: Dice): PlannedFlight[] {
  return [8, 11, 14].map((hour, at) => ({
    id: `F${at}`,
    from: dice.of(STATIONS),
    to: 'Saltby',
    offBlockAt: `2026-03-10T${String(hour).padStart(2, '0')}:00Z`,
    onBlockAt: `2026-03-10T${hour + 2}:00Z`,
    facts: {
      'flight.rvsm': dice.of([false, false, false, false, true, null]),
      'flight.icing': dice.of(['none', 'none', 'none', 'forecast', 'known', null]),
      'flight.etopsMinutes': dice.of([0, 0, 0, 120, null]),
    },
  }));
}

/** Most of the defects, most under the row they stand under, and sometimes under another. */
function drawGivenOn(dice: Dice, mel: Mel, defects: readonly OpenDefect[]): GivenOn {
  const items = defects
    .filter(() => dice.chance(0.93))
    .map(({ id, entry, row }) => {
      const rows = mel.entry(entry ?? '')?.subEntries.flatMap((one) => one.rows) ?? [];
      return { defect: id, row: dice.chance(0.6) || rows.length === 0 ? row : dice.of(rows).id };
    });
  const facts: GivenOn['flights'][number]['facts'] = dice.chance(0.7) ? {} : { 'flight.icing': 'none' };
  const flights = STATIONS.filter(() => dice.chance(0.85)).map((from) => ({ from, to: 'Saltby', facts }));
  return { items, flights: dice.chance(0.6) ? [] : flights };
}

/** Each answer that is recorded becomes one to three, most of them given on something; more rows wait to be signed. */
function withGivenOn(dice: Dice, mel: Mel, situation: Situation): Situation {
  const defects = situation.defects.map((one) => ({ ...one, signed: one.signed && dice.chance(0.8) }));
  const judgements = situation.judgements.flatMap((one) =>
    dice.list(1, 3, (): RecordedJudgement => ({
      ...one,
      accepted: dice.chance(0.75),
      at: dice.of(AT),
      ...(dice.chance(0.85) ? { givenOn: drawGivenOn(dice, mel, defects) } : {}),
    })),
  );
  const settings = { ...situation.settings, combinationNeedsAcceptance: dice.chance(0.6) };
  return { ...situation, defects, flight: null, facts: {}, judgements, settings };
}

function told({ best, possible, whole }: FoundPlan) {
  const items = best.legs[0]?.judged?.groups.flatMap((group) => group.items) ?? [];
  return {
    kept: best.p,
    possible,
    whole,
    order: best.order,
    flights: best.legs.map(({ lo, hi }) => `${lo} to ${hi}`),
    rows: items.map(({ answer: { entry, unit, row } }) => `${entry}/${unit} ${row}`),
  };
}

const anyItem = ({ givenOn: _, ...one }: RecordedJudgement): RecordedJudgement => one;

it('flights ahead are found by values as in full where answers were given on certain items', async () => {
  const seen = { byValue: 0, kept: 0, broken: 0, open: 0, changed: 0, turnsOnItems: 0 };
  for (let seed = FIRST; seed <= LAST; seed++) {
    const dice = new Dice(seed + 5_000);
    for (const { mel, situation } of drawCases(seed, 4)) {
      const flights = drawPlan(dice);
      const start = withGivenOn(dice, mel, situation);
      const stops = stopsOf(mel, start, [{ station: 'Saltby', maintenance: dice.of([true, true, false, null]) }]);
      for (const rows of ['recorded', 'any'] as const) {
        const searching = () => ({ budget: { left: 100_000 }, rows });
        const values = searchByValue(stops, start, flights, searching());
        const one = told(await searchPlans(stops, start, flights, searching()));
        const two = told(await searchInFull(stops, start, flights, searching()));
        expect(one, `${rows} rows of seed ${seed}`).toEqual(two);
        if (values === null) continue;
        seen.byValue += 1;
        seen[one.kept === flights.length ? 'kept' : 'broken'] += 1;
        if (one.possible > one.kept) seen.open += 1;
        if (rows === 'any' && (one.order[2] ?? 0) > 0) seen.changed += 1;
        const always = { ...start, judgements: start.judgements.map(anyItem) };
        const other = searchByValue(stops, always, flights, searching());
        if (other?.best.p !== values.best.p || other.possible !== values.possible) seen.turnsOnItems += 1;
      }
    }
  }
  expect(Math.min(...Object.values(seen)), JSON.stringify(seen)).toBeGreaterThan(10);
});
