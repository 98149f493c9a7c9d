/**
 * One row for each open defect, so that every condition of every row holds at once (rules 1 to 8 for one flight).
 *
 * It only proposes: a row that is not the signed one is at best "may fly after work". What is shown is judged anew by the
 * rules engine.
 */
import type { Mel } from '#mel';
import { better, compareBounds } from '../bounds.js';
import { Frame } from '../frame/frame.js';
import { judgeGates } from '../gates.js';
import { answerFrom } from '../judge.js';
import { search, type Found } from '../search.js';
import type { Situation } from '../situation.js';
import { Fitted } from '../units/fitted.js';
import { byCode } from '../units/unit.js';
import type { Proposal, ProposedRow, ProposeOptions } from './proposal.js';
import { isChange, rowsOfDefect, situationUnder, type ProposedRows } from './rows-of-defect.js';

export async function propose(mel: Mel, situation: Situation, options: ProposeOptions = {}): Promise<Proposal> {
  const budget = options.budget ?? situation.settings.budget;
  const fitted = new Fitted(mel, situation.aircraft);
  const defects = [...situation.defects].sort((a, b) => byCode(a.id, b.id));
  let best: { frame: Frame; found: Found; rows: ProposedRows; changes: number } | null = null;
  let [lo, hi]: [Found['lo'], Found['hi']] = ['may-not-fly', 'may-not-fly'];
  let nodes = 0;
  let stopped: Proposal['reason'] = null;
  for (const rows of everyChoice(defects.map((defect) => [defect.id, rowsOfDefect(defect, fitted)]))) {
    if (nodes >= budget) {
      stopped = 'budget';
      break;
    }
    nodes += 1;
    const frame = new Frame(mel, situationUnder(situation, rows));
    const found = await search(frame, judgeGates(frame));
    stopped ??= found.stopped;
    lo = better(lo, found.lo);
    hi = better(hi, found.hi);
    const changes = defects.filter((defect) => isChange(defect, rows.get(defect.id) ?? null)).length;
    const order = best === null ? 1 : compareBounds(found.lo, best.found.lo);
    if (best === null || order > 0 || (order === 0 && changes < best.changes)) best = { frame, found, rows, changes };
  }
  if (best === null) throw new Error('A proposal needs a budget of at least one node.');
  const { frame, found, rows } = best;
  if (stopped !== null) hi = better(hi, 'may-fly');
  const verdict = await answerFrom(frame, judgeGates(frame), { ...found, lo, hi, stopped });
  const shown = defects.map((defect): ProposedRow => {
    const row = rows.get(defect.id) ?? null;
    const { id, entry, units } = defect;
    const signedRow = defect.signed ? defect.row : null;
    return { defect: id, entry, units, row, signedRow, isChange: isChange(defect, row) };
  });
  return { verdict, rows: shown, shownBest: stopped === null, reason: stopped, nodes };
}

function* everyChoice(domains: readonly (readonly [string, readonly (string | null)[]])[]): Generator<ProposedRows> {
  const [first, ...rest] = domains;
  if (first === undefined) {
    yield new Map();
    return;
  }
  for (const row of first[1]) for (const others of everyChoice(rest)) yield new Map([[first[0], row], ...others]);
}
