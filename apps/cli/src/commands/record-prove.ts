import { writeFile } from 'node:fs/promises';
import type { ProofFile } from '#record';
import type { Tx } from '#store';
import type { Command } from '../command.js';
import { withDatabase } from '../database.js';
import { DATABASE, type Given, needed } from '../options.js';
import { UsageError } from '../usage-error.js';
import { count } from '../words/say-time.js';

export const recordProve: Command = {
  name: 'record prove',
  summary: 'write a file from which anybody can check entries of the record, and how it grew',
  options: [
    { name: 'operator', value: 'CODE', about: 'whose record', must: true },
    { name: 'to', value: 'FILE', about: 'the file to write; one that is there is not written over', must: true },
    { name: 'entry', value: 'N', about: 'the entry of this number' },
    { name: 'aircraft', value: 'MARK', about: 'every entry about this aircraft, in place of --entry' },
    { name: 'defect', value: 'MARK/N', about: 'every entry about this defect, in place of both' },
    { name: 'since', value: 'SIZE', about: 'also how the record grew from this many entries' },
    DATABASE,
  ],
  examples: ['record prove --operator QOF --defect Q-KEA/3 --to proof.json'],
  async run(given) {
    const code = needed(given, 'operator');
    const to = needed(given, 'to');
    const file = await withDatabase(given.options.get('database'), ({ ownerUrl }) => proven(ownerUrl, code, given));
    await written(to, `${JSON.stringify(file, null, 2)}\n`);
    return { value: { file: to, ...summary(file) }, words: words(to, file), exit: 0 };
  },
};

async function proven(url: string, code: string, given: Given): Promise<ProofFile> {
  const { openStore, recordedOperators } = await import('#store');
  const operator = (await recordedOperators(url)).find((one) => one.code === code || one.id === code);
  if (!operator) throw new UsageError(`--operator ${code}: there is no such operator`);
  const since = wholeOf(given, 'since');
  const store = await openStore(url, { connections: 1 });
  try {
    return await store.withOperator(operator.id, null, async (tx) =>
      tx.proofs.file({ entryIds: await entriesAsked(tx, given), ...(since === undefined ? {} : { since }) }),
    );
  } catch (error) {
    if (error instanceof RangeError) throw new UsageError(error.message);
    throw error;
  } finally {
    await store.close();
  }
}

async function entriesAsked(tx: Tx, given: Given): Promise<string[]> {
  const asked = ['entry', 'aircraft', 'defect'].filter((name) => given.options.has(name));
  if (asked.length > 1) throw new UsageError(`--${asked.join(' and --')} are given; one file is about one of them`);
  const number = wholeOf(given, 'entry');
  if (number !== undefined) {
    const id = await tx.proofs.entryNumbered(number);
    if (id === null) throw new UsageError(`--entry ${number}: the record holds no such entry`);
    return [id];
  }
  const mark = given.options.get('aircraft') ?? given.options.get('defect')?.replace(/\/\d+$/, '');
  if (mark === undefined) return [];
  const aircraft = (await tx.aircraft.list()).find(({ registration }) => registration === mark);
  if (!aircraft) throw new UsageError(`there is no aircraft ${mark}`);
  if (!given.options.has('defect')) return tx.proofs.entriesOf(aircraft.id);
  const asDefect = given.options.get('defect') ?? '';
  const defect = (await tx.defects.ofAircraft(aircraft.id)).find((one) => `${mark}/${one.number}` === asDefect);
  if (!defect) throw new UsageError(`--defect ${asDefect}: there is no such defect`);
  return tx.proofs.entriesOf(aircraft.id, defect.id);
}

function wholeOf({ options }: Given, name: string): number | undefined {
  const text = options.get(name);
  if (text === undefined) return undefined;
  if (!/^[1-9]\d{0,14}$/.test(text)) throw new UsageError(`--${name} ${text} is no whole number from 1`);
  return Number(text);
}

/** Never over a file that is there: it may be the head or the proof that somebody kept. */
async function written(path: string, content: string): Promise<void> {
  try {
    await writeFile(path, content, { flag: 'wx' });
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException;
    throw new UsageError(`${path}: ${code === 'EEXIST' ? 'is there already and is not written over' : message}`);
  }
}

function summary({ head, earlier, entries }: ProofFile) {
  return {
    size: head.size,
    signed: 'signature' in head,
    entries: entries.map(({ number }) => number),
    since: earlier?.head.size ?? null,
  };
}

function words(path: string, { head, earlier, entries }: ProofFile): string {
  const signed = 'signature' in head ? `signed ${head.signedAt}` : 'NOT signed: start the server with --heads FOLDER';
  const grown = earlier ? ` It shows how the record grew from ${count(earlier.head.size, 'entry', 'entries')}.` : '';
  const about = `${count(entries.length, 'entry', 'entries')} of ${head.size}`;
  return `${path}: ${about}, head ${signed}.${grown}\nCheck it with: proviso record check ${path} --key PUBLIC-KEY.pem`;
}
