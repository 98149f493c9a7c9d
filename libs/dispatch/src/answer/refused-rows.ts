/** The rows that cannot be used, each with what refuses it: those in use, and the other rows of units taken along. */
import type { Row } from '#mel';
import { rowsFor, type JudgedChoice } from '../choice.js';
import { judgeItems, type JudgedItem } from '../conditions/judge-item.js';
import type { Frame } from '../frame/frame.js';
import { DownState } from '../units/down-state.js';
import { readingsOf, wholeReadings } from '../units/readings.js';
import { byCode, unitKey } from '../units/unit.js';
import type { RefusedRow } from '../verdict.js';
import { conditionSaid } from './words.js';

export async function refusedRows(frame: Frame, choice: JudgedChoice | null): Promise<RefusedRow[]> {
  if (choice === null) return [];
  const inUse = choice.groups.flatMap(({ items }) => items);
  const others = await Promise.all(inUse.map((one) => otherRows(frame, one, choice)));
  return [...inUse, ...others.flat()]
    .flatMap(refusal)
    .sort((a, b) => byCode(a.entry, b.entry) || byCode(a.unit, b.unit) || byCode(a.row, b.row));
}

function refusal({ answer }: JudgedItem): RefusedRow[] {
  const because = answer.conditions.filter(({ after }) => after === 'F').map(conditionSaid);
  if (answer.row === null || because.length === 0) return [];
  return [{ entry: answer.entry, unit: answer.unit, row: answer.row, because }];
}

/** A unit that is only considered inoperative could take another row of its entry. */
async function otherRows(frame: Frame, { item }: JudgedItem, choice: JudgedChoice): Promise<JudgedItem[]> {
  const { entry, unit, cause } = item;
  if (entry === null || cause.kind === 'failed') return [];
  const considered = { entry: entry.number, unit, by: cause.by, row: cause.by.row, inAll: !item.perhaps };
  const others = rowsFor(frame, considered).filter(({ id }) => id !== item.row?.id);
  const judged = others.map((row) =>
    judgeItems([{ ...item, row }], frame, stateWith(frame, choice, unitKey(considered), row)),
  );
  return (await Promise.all(judged)).flat();
}

function stateWith(frame: Frame, { choice }: JudgedChoice, unit: string, row: Row): DownState {
  const readings = frame.defects.map((defect) =>
    readingsOf(defect, choice.recorded.get(defect.id) ?? null, frame.fitted),
  );
  return new DownState(frame.fitted, wholeReadings(readings) ?? [], new Map([...choice.considered, [unit, row]]));
}
