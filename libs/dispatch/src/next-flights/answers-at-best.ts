/**
 * The answers of persons at their best for any choice of rows, for boards that bound every choice. Which rows stand decides
 * whether an answer that was given on certain items holds or is asked again: so a yes holds if some choice lets it, and a
 * no is left out, since another choice may have it asked again. On which flights they hold no row can change.
 */
import type { Mel } from '#mel';
import { interacts } from '../frame/given-on.js';
import type { Problem } from '../proposal/problem.js';
import type { GivenOn, OpenDefect, RecordedJudgement, Situation } from '../situation.js';

type Items = GivenOn['items'];
type RowsOf = (defect: OpenDefect) => readonly (string | null)[];

export function withAnswersAtBest(mel: Mel, { variables }: Problem, situation: Situation): Situation {
  if (situation.judgements.every(({ givenOn }) => givenOn === undefined)) return situation;
  const rows = new Map(
    variables.flatMap(({ defect, rows: some }) =>
      defect === null ? [] : [[defect.id, some.map(({ id }) => id)] as const],
    ),
  );
  const rowsOf: RowsOf = ({ id }) => rows.get(id) ?? [];
  const asked = situation.defects.filter((defect) => interacts({ mel }, defect));
  const anyRow = asked.flatMap((defect) =>
    [null, defect.row, ...rowsOf(defect)].map((row) => ({ defect: defect.id, row })),
  );
  const atBest = (one: RecordedJudgement): RecordedJudgement[] => {
    const { givenOn, accepted } = one;
    if (givenOn === undefined) return [one];
    const mayHold = accepted && asked.every((defect) => mayBeAmong(givenOn.items, defect, rowsOf));
    return mayHold ? [{ ...one, givenOn: { ...givenOn, items: anyRow } }] : [];
  };
  return { ...situation, judgements: situation.judgements.flatMap(atBest) };
}

/** Under a row that is signed now and stays, only that row counts; one that is proposed is tried. */
function mayBeAmong(items: Items, defect: OpenDefect, rowsOf: RowsOf): boolean {
  const { id, row, signed } = defect;
  const stays = signed && rowsOf(defect).every((one) => one === row);
  return items.some((item) => item.defect === id && (!stays || item.row === row));
}
