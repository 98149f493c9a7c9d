/**
 * Choices searched a second by the compiled evaluator beside the rules engine, on the same problem and the same trees; and
 * the time of a whole proposal for eight defects with three rows each.
 */
import { compileAll, propose } from '../../dist/libs/dispatch/src/index.js';
import { judgeChoice } from '../../dist/libs/dispatch/src/choice.js';
import { Frame } from '../../dist/libs/dispatch/src/frame/frame.js';
import { judgeGates } from '../../dist/libs/dispatch/src/gates.js';
import { Board } from '../../dist/libs/dispatch/src/proposal/board.js';
import { buildProblem } from '../../dist/libs/dispatch/src/proposal/build-problem.js';
import { situationUnder } from '../../dist/libs/dispatch/src/proposal/rows-of-defect.js';
import { readingsOf, wholeReadings } from '../../dist/libs/dispatch/src/units/readings.js';
import { loadMel } from '../../dist/libs/mel/src/index.js';
import { content, flightFacts, situation } from './bench-mel.mjs';
import { inTurns, rate, ratio } from './measure.mjs';

const DEFECTS = 8;
const ROWS = 3;

export async function proposing() {
  const { mel } = loadMel(withRows(), 'bench');
  compileAll(mel);
  const same = situation(DEFECTS);
  const { verdict } = await propose(mel, same);
  if (verdict.verdict !== 'after-work') throw new Error(`expected after-work, got ${verdict.verdict}`);
  const problem = buildProblem(mel, same);
  const board = new Board(problem, [...problem.variables.keys()]);
  const choices = Array.from({ length: 64 }, (_, at) => rowsOf(at * 97));
  let next = 0;
  const { byEngine, compiled, whole } = await inTurns({
    byEngine: () => judgedByEngine(mel, withFacts(same), choices[next++ % choices.length]),
    compiled: () => {
      for (const rows of choices) {
        for (const variable of board.variables) board.chosen[variable] = rows[variable];
        board.update();
      }
    },
    whole: () => propose(mel, withFacts(same)),
  });
  return [
    `${DEFECTS} open defects x ${ROWS} rows, one flight, facts never seen before:`,
    `  choices judged by the rules engine      ${rate(byEngine)}/s`,
    `  choices judged by the compiled search   ${rate(compiled * choices.length)}/s   ${ratio(compiled * choices.length, byEngine)} of the engine`,
    `  whole proposals                         ${rate(whole)}/s, ${(1000 / whole).toFixed(2)} ms each`,
  ];
}

/** Three rows of each entry: the signed one fails at this flight's level, and the two others differ in work. */
function withRows() {
  const low = { fact: 'flight.level', operator: 'lessThanInclusive', value: 99 };
  const others = (row) => ['2', '3'].map((id) => ({ ...row, id, procedures: [procedure(Number(id) * 10)] }));
  const first = (row) => ({ ...row, provisos: [...row.provisos, { id: 'c', text: 'Proviso c', when: low }] });
  return {
    ...content,
    entries: content.entries.map((entry, at) => ({
      ...entry,
      subEntries: entry.subEntries.map((sub) => ({
        ...sub,
        rows: sub.rows.flatMap((row) => [at % 2 === 0 ? first(row) : row, ...others(row)]),
      })),
    })),
  };
}

const procedure = (minutes) => ({ id: 'M1', kind: 'M', text: 'Secure it.', minutes });

/** A choice of rows by number: its digits to the base of three. */
const rowsOf = (number) => Array.from({ length: DEFECTS }, (_, at) => Math.floor(number / ROWS ** at) % ROWS);

async function judgedByEngine(mel, whole, rows) {
  const recorded = new Map(whole.defects.map(({ id }, at) => [id, String(rows[at] + 1)]));
  const frame = new Frame(mel, situationUnder(whole, recorded));
  const readings = frame.defects.map((defect) => readingsOf(defect, defect.row, frame.fitted));
  return judgeChoice(frame, wholeReadings(readings), { recorded, considered: new Map() }, judgeGates(frame));
}

let asked = 0;

function anotherFlight() {
  asked += 1;
  return { ...flightFacts, 'flight.level': 100 + asked / 1_000_000 };
}

const withFacts = (whole) => ({ ...whole, flight: { ...whole.flight, facts: anotherFlight() } });
