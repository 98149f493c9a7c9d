import { judge as judgeSituation, readCase, type Situation, type Verdict } from '#dispatch';
import { IntervalInputError } from '#intervals';
import { readPlainYaml, type Mel } from '#mel';
import type { Command } from '../command.js';
import { firstOf, melFrom } from '../mel-file.js';
import { filesOf, needed, readGiven } from '../options.js';
import { readText } from '../read-file.js';
import { UsageError } from '../usage-error.js';
import { verdictWords } from '../words/verdict-words.js';

export const judge: Command = {
  name: 'judge',
  takes: '--mel FILE --case FILE',
  summary: 'may this aircraft fly this flight with what is open on it, and why',
  async run(args) {
    const given = readGiven(args, ['mel', 'case']);
    filesOf(given);
    const [melFile, caseFile] = [needed(given, 'mel'), needed(given, 'case')];
    const mel = await melFrom(melFile);
    const situation = await situationFrom(caseFile, mel);
    const verdict = await verdictOn(mel, situation, caseFile);
    return { value: verdict, words: verdictWords(verdict, situation, mel.content.notice), exit: 0 };
  },
};

async function situationFrom(file: string, mel: Mel): Promise<Situation> {
  const parsed = readPlainYaml(await readText(file));
  if ('problems' in parsed) throw new UsageError(`${file}: ${firstOf(parsed.problems)}`);
  const read = readCase(parsed.value, file, mel, process.versions.tz ?? 'unknown');
  if ('situation' in read) return read.situation;
  throw new UsageError(
    firstOf(read.errors.map((one) => [one.file, one.pointer, one.reason].filter(Boolean).join(': '))),
  );
}

/** What only the calculation itself finds out, such as a stored deadline that is none. */
async function verdictOn(mel: Mel, situation: Situation, file: string): Promise<Verdict> {
  try {
    return await judgeSituation(mel, situation);
  } catch (error) {
    if (error instanceof IntervalInputError) throw new UsageError(`${file}: ${error.message}`);
    throw error;
  }
}
