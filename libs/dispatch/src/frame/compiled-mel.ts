/** The engines of a MEL revision: one per proviso, built at its first use, kept as long as the revision is. */
import type { Entry, Mel, Proviso } from '#mel';
import type { CompiledProviso } from '../evaluate/compiled-proviso.js';
import { compileProviso } from '../evaluate/proviso-engine.js';

const OF_MEL = new WeakMap<Mel, WeakMap<Proviso, CompiledProviso>>();

export function compiled(mel: Mel, proviso: Proviso): CompiledProviso {
  let ofMel = OF_MEL.get(mel);
  if (ofMel === undefined) OF_MEL.set(mel, (ofMel = new WeakMap()));
  let one = ofMel.get(proviso);
  if (one === undefined) ofMel.set(proviso, (one = compileProviso(proviso, (subject) => nameOf(mel, subject))));
  return one;
}

/** Builds every engine of a MEL at once, so that the first answer is not slower than the others. */
export function compileAll(mel: Mel): void {
  for (const entry of mel.entries) {
    for (const proviso of rowsOf(entry).flatMap((row) => row.provisos ?? [])) compiled(mel, proviso);
  }
}

/** Title of an entry, or the words for a piece of work or a judgement, by its key. */
export function nameOf(mel: Mel, subject: string): string {
  if (subject === 'combination') return 'the combination of open items';
  const [number = '', row, id] = subject.split('/');
  const entry = mel.entry(number);
  if (entry === undefined) return subject;
  if (row === undefined) return entry.title;
  const found = rowsOf(entry).find((one) => one.id === row);
  const procedure = found?.procedures?.find((one) => one.id === id);
  const judgement = found?.judgements?.find((one) => one.id === id);
  const what = procedure?.text ?? judgement?.question ?? (id === 'placard' ? found?.placard?.text : undefined) ?? id;
  return `${entry.title}, row ${row}: ${what}`;
}

function rowsOf(entry: Entry) {
  return entry.subEntries.flatMap((subEntry) => subEntry.rows);
}
