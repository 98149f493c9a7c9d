import {
  atStation,
  judgeOrPropose,
  nextFlights,
  planQuestions,
  readCase,
  whatHelps,
  type CaseRead,
  type Situation,
} from '#dispatch';
import { IntervalInputError } from '#intervals';
import { readPlainYaml, type Mel } from '#mel';
import type { Command } from '../command.js';
import { firstOf, melFrom } from '../mel-file.js';
import { needed } from '../options.js';
import { readText } from '../read-file.js';
import { changesIn, rowsAsked, tried } from '../tried-changes.js';
import { UsageError } from '../usage-error.js';
import { nextFlightsWords } from '../words/next-flights-words.js';
import { verdictWords } from '../words/verdict-words.js';
import { questionPlanWords, whatHelpsWords } from '../words/what-helps-words.js';

export const judge: Command = {
  name: 'judge',
  summary: 'may this aircraft fly this flight, or each flight of its day, with what is open on it, and why',
  options: [
    { name: 'mel', value: 'FILE', about: 'the MEL, YAML or JSON', must: true },
    { name: 'case', value: 'FILE', about: 'aircraft, open defects, flights, facts and the instant', must: true },
    { name: 'try', value: 'FILE', about: 'changes to suppose: what each would do to the answer' },
  ],
  examples: ['judge --mel seed/mel.yaml --case seed/examples/may-not-fly.yaml'],
  async run(given) {
    const [melFile, caseFile] = [needed(given, 'mel'), needed(given, 'case')];
    const mel = await melFrom(melFile);
    const { situation, flights, stations } = await caseFrom(caseFile, mel, given.options.get('try'));
    const { notice } = mel.content;
    if (flights.length > 1) {
      const told = await calculated(caseFile, () => nextFlights(mel, situation, flights, { stations }));
      return { value: told, words: nextFlightsWords(told, situation.aircraft.registration, notice), exit: 0 };
    }
    const { verdict, helps, plan } = await calculated(caseFile, () =>
      wholeAnswer(mel, atStation(mel, situation, stations)),
    );
    const more = [...whatHelpsWords(helps, mel, situation), questionPlanWords(plan)];
    const value = { ...verdict, ...helps, questionPlan: plan };
    return { value, words: verdictWords(verdict, situation, { notice, more }), exit: 0 };
  },
};

/** The answer with all that stands beside it: better rows, the least to fix, why rows are refused, what to ask first. */
async function wholeAnswer(mel: Mel, situation: Situation) {
  const judged = await judgeOrPropose(mel, situation);
  const helps = await whatHelps(mel, situation, judged.verdict);
  return { verdict: judged.verdict, helps, plan: await planQuestions(mel, judged.situation) };
}

/** The case as its file says; with a file of changes, as it would be. */
async function caseFrom(file: string, mel: Mel, tryFile: string | undefined): Promise<CaseRead> {
  const value = await plainFrom(file);
  if (tryFile === undefined) return caseOf(value, file, mel);
  const changes = changesIn(await plainFrom(tryFile), tryFile);
  const read = caseOf(tried(value, tryFile, changes), `${file} with ${tryFile}`, mel);
  return { ...read, situation: rowsAsked(read.situation, changes) };
}

async function plainFrom(file: string): Promise<unknown> {
  const parsed = readPlainYaml(await readText(file));
  if ('problems' in parsed) throw new UsageError(`${file}: ${firstOf(parsed.problems)}`);
  return parsed.value;
}

function caseOf(value: unknown, file: string, mel: Mel): CaseRead {
  const read = readCase(value, file, mel, process.versions.tz ?? 'unknown');
  if ('situation' in read) return read;
  throw new UsageError(
    firstOf(read.errors.map((one) => [one.file, one.pointer, one.reason].filter(Boolean).join(': '))),
  );
}

/** What only the calculation itself finds out, such as a stored deadline that is none. */
async function calculated<T>(file: string, calculate: () => Promise<T>): Promise<T> {
  try {
    return await calculate();
  } catch (error) {
    if (error instanceof IntervalInputError) throw new UsageError(`${file}: ${error.message}`);
    throw error;
  }
}
