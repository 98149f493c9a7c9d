import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';

/** One way to break one rule: the text `find`, which stands once in `file`, becomes `replace`. */
export interface Patch {
  rule: string;
  file: string;
  find: string;
  replace: string;
  tests: string[];
  /** Patches of one such name are applied at once, since a run of their tests takes long. */
  together?: string;
  /** With `together`: the tests that must turn red by this patch, a regular expression of their titles. */
  only?: string;
}

const KEYS = ['rule', 'file', 'find', 'replace', 'tests'];
const MAY_HAVE = [...KEYS, 'together', 'only'];

/** Every patch in the YAML files of a folder, each file a list. Throws a sentence naming the file and the patch. */
export function readPatches(folder: string): Patch[] {
  const patches = readdirSync(folder)
    .filter((name) => name.endsWith('.yaml'))
    .sort()
    .flatMap((name) => {
      const list: unknown = parse(readFileSync(join(folder, name), 'utf8'));
      if (!Array.isArray(list)) throw new Error(`${name}: a list of patches is needed`);
      return list.map((item, i) => patchFrom(item, `${name}, patch ${i + 1}`));
    });
  const twice = patches.find(({ rule }, i) => patches.findIndex((other) => other.rule === rule) < i);
  if (twice) throw new Error(`two patches are called "${twice.rule}"`);
  return patches;
}

function patchFrom(item: unknown, where: string): Patch {
  const patch = item as Patch;
  const keys = Object.keys(patch ?? {});
  if (keys.some((key) => !MAY_HAVE.includes(key)) || KEYS.some((key) => !keys.includes(key))) {
    throw new Error(`${where}: needs ${KEYS.join(', ')} and nothing else, has ${keys.join(', ')}`);
  }
  const texts = [patch.rule, patch.file, patch.find, patch.replace, patch.together ?? '', patch.only ?? ''];
  if (texts.some((text) => typeof text !== 'string'))
    throw new Error(`${where}: ${KEYS.slice(0, 4).join(', ')}, together, only are texts`);
  if ((patch.together === undefined) !== (patch.only === undefined))
    throw new Error(`${where}: together and only go together`);
  if (!Array.isArray(patch.tests) || patch.tests.length === 0)
    throw new Error(`${where}: tests is a list of spec files`);
  if (/\n/.test(patch.find + patch.replace)) throw new Error(`${where}: a patch changes one line`);
  if (patch.find === patch.replace) throw new Error(`${where}: it changes nothing`);
  return patch;
}

/** What keeps a patch from being applied below `root`, as a sentence; null when it can be. */
export function misfit(root: string, { file, find, tests }: Patch): string | null {
  const missing = [file, ...tests].find((path) => !existsSync(join(root, path)));
  if (missing !== undefined) return `there is no file ${missing}`;
  const times = readFileSync(join(root, file), 'utf8').split(find).length - 1;
  return times === 1 ? null : `\`${find}\` stands ${times} times in ${file}, and must stand there once`;
}
