/** Answers of persons that were given on certain items, rows and routes, for drawn situations. */
import type { GivenOn, OpenDefect, RecordedJudgement, Situation } from '#dispatch';
import type { Mel } from '#mel';
import type { Dice } from '../support/dice.js';

export const STATIONS = ['Northmere', 'Saltby'];
const AT = ['2026-03-10T04:00Z', '2026-03-10T05:00Z', '2026-03-10T06:00Z'];

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
export function withGivenOn(dice: Dice, mel: Mel, situation: Situation): Situation {
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
  return { ...situation, defects, judgements, settings };
}
