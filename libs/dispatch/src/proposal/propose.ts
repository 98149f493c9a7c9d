/**
 * One row for each open defect, so that every condition of every row holds at once (rules 1 to 8 for one flight).
 *
 * It only proposes: a row that is not the signed one is at best "may fly after work". The search runs on the compiled
 * evaluator; what is shown is judged anew by the rules engine, and a disagreement of the two stops everything.
 */
import type { Mel } from '#mel';
import { BOUNDS, highest, lowest } from '../bounds.js';
import { judgeChoice, type JudgedChoice } from '../choice.js';
import { codeOf, pairOf } from '../compiled/code.js';
import { conditionsOf, EvaluatorsDisagree } from '../evaluators-disagree.js';
import { Frame } from '../frame/frame.js';
import { judgeGates } from '../gates.js';
import { answerFrom } from '../judge.js';
import { search } from '../search.js';
import type { OpenDefect, Situation } from '../situation.js';
import { readingsOf, wholeReadings } from '../units/readings.js';
import { byCode } from '../units/unit.js';
import { Budget } from './explore.js';
import { choiceOf, findChoice, type FoundChoice } from './find-choice.js';
import { keptChoices } from './kept-choices.js';
import type { Proposal, ProposedRow, ProposeOptions } from './proposal.js';
import { isChange, situationUnder, someRows, type ProposedRows } from './rows-of-defect.js';

/** Throws IntervalInputError when an instant or a stored interval of the situation cannot be read, and EvaluatorsDisagree. */
export async function propose(mel: Mel, situation: Situation, options: ProposeOptions = {}): Promise<Proposal> {
  const signed = new Frame(mel, situationUnder(situation, someRows(mel, situation)));
  const gates = judgeGates(signed);
  if (wholesOf(signed) === null) {
    const verdict = await answerFrom(signed, gates, await search(signed, gates));
    return { verdict, rows: rowsShown(situation, new Map()), shownBest: false, reason: 'readings', nodes: 0 };
  }
  const budget = new Budget(options.budget ?? situation.settings.budget);
  const found = findChoice(mel, situation, gates, budget);
  const { recorded } = choiceOf(found.problem, found.list);
  const frame = new Frame(mel, situationUnder(situation, recorded));
  const best = await judgedByEngine(frame, found);
  const kept =
    found.lo === found.hi ? { kept: [best], keptAll: true } : await keptChoices(mel, situation, found, best);
  const verdict = await answerFrom(frame, judgeGates(frame), {
    best,
    lo: BOUNDS[found.lo] ?? 'may-not-fly',
    hi: BOUNDS[found.hi] ?? 'may-not-fly',
    kept: kept.kept,
    keptAll: kept.keptAll && found.isWhole,
    stopped: found.isWhole ? null : 'budget',
  });
  const reason = found.isWhole ? null : 'budget';
  return {
    verdict,
    rows: rowsShown(situation, recorded),
    shownBest: found.isWhole,
    reason,
    nodes: budget.used,
  };
}

function wholesOf(frame: Frame) {
  return wholeReadings(frame.defects.map((defect) => readingsOf(defect, defect.row, frame.fitted)));
}

async function judgedByEngine(frame: Frame, found: FoundChoice): Promise<JudgedChoice> {
  const judged = await judgeChoice(
    frame,
    wholesOf(frame) ?? [],
    choiceOf(found.problem, found.list),
    judgeGates(frame),
  );
  if (codeOf(judged) === found.value) return judged;
  const pair = pairOf(found.value);
  throw new EvaluatorsDisagree(frame.situation, [
    { way: 'the rules engine', lo: lowest(judged), hi: highest(judged), conditions: conditionsOf(judged) },
    { way: 'the search for rows', lo: lowest(pair), hi: highest(pair), conditions: null },
  ]);
}

function rowsShown({ defects }: Situation, rows: ProposedRows): ProposedRow[] {
  return [...defects]
    .sort((a, b) => byCode(a.id, b.id))
    .map((defect) => rowShown(defect, rows.get(defect.id) ?? defect.row));
}

function rowShown(defect: OpenDefect, row: string | null): ProposedRow {
  const { id, entry, units, signed } = defect;
  return { defect: id, entry, units, row, signedRow: signed ? defect.row : null, isChange: isChange(defect, row) };
}
