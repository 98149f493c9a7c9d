/** Lists of erasures as they lie in a folder of signed heads, and what is said of them. */
import { readdir, stat } from 'node:fs/promises';
import { basename, join } from 'node:path';
import type { ErasedAgain, ErasureFile } from '#store';
import type { Option } from './options.js';
import { jsonIn } from './signed-file.js';
import { UsageError } from './usage-error.js';
import { count, sayInstant } from './words/say-time.js';

const ENDING = '.erasures.json';

export const ERASED: Option = {
  name: 'erased',
  value: 'FILE|FOLDER',
  about: 'the list of erasures, or the folder of signed heads where it lies: whoever is on it is erased again',
};

export const ERASURES_KEY: Option = {
  name: 'key',
  value: 'PUBLIC-KEY.pem',
  about: 'a key that the list may be signed with, beside those of the heads in the database',
};

/**
 * The newest list of each operator in a folder, or the one in a file.
 * @throws UsageError naming what cannot be read; a list that is damaged is never passed over for an older one
 */
export async function erasuresIn(path: string): Promise<ErasureFile[]> {
  const there = await stat(path).catch(() => null);
  if (there === null) throw new UsageError(`--erased ${path}: there is no such file or folder`);
  if (!there.isDirectory()) return [{ name: basename(path), content: await jsonIn(path) }];
  const names = newestOfEach(await readdir(path));
  if (names.length === 0) throw new UsageError(`--erased ${path}: holds no list of erasures (*${ENDING})`);
  return Promise.all(names.map(async (name) => ({ name, content: await jsonIn(join(path, name)) })));
}

/** `QOF-1a2b3c4d-000002.erasures.json` goes before the one of 1. */
export function newestOfEach(names: readonly string[]): string[] {
  const newest = new Map<string, string>();
  for (const name of names.filter((one) => one.endsWith(ENDING)).toSorted()) {
    newest.set(name.slice(0, -ENDING.length).replace(/-\d+$/, ''), name);
  }
  return [...newest.values()];
}

export function erasedWords({ operator, list, signedAt, named, erased }: ErasedAgain): string {
  const again =
    erased === 0
      ? 'none of them stood in it any longer'
      : `${count(erased, 'of them', 'of them')} erased again, with an entry in the record`;
  return `${operator}: held against the list of erasures ${list}, signed ${sayInstant(signedAt)}: ${count(named, 'person', 'people')} on it, ${again}.`;
}

/** What a restore without a list cannot know, and what to do about it. */
export function unheldWords(operator: string, madeAt: string): string {
  return `${operator}: NOT held against a list of erasures. Whoever was erased after ${sayInstant(madeAt)} stands in this database again, with name, licence number and sign-in; the backup cannot tell who. Before anybody works with it: proviso erase again --erased FOLDER-OF-SIGNED-HEADS.`;
}
