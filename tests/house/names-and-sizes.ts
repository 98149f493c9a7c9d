import { existsSync, readFileSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { ignoredNames, projectFiles } from './tree.js';

/** One law of names and sizes: what to do when it fires, and the paths that break it. */
export interface HouseLaw {
  law: string;
  advice: string;
  broken(root: string): string[];
}

const TOP_FILES = [
  'README.md',
  'DEVELOPERS.md',
  'package.json',
  'package-lock.json',
  'tsconfig.json',
  'docker-compose.yml',
];
const TOP = new Set([...TOP_FILES, 'apps', 'libs', 'tests', 'seed']);
const APPS = ['cli', 'server', 'web'];
const LIBS = ['deferrals', 'dispatch', 'intervals', 'mel', 'movements', 'record', 'store'];
const VAGUE = /^(common|core|shared|utils?|helpers?|base)$/;
const KEBAB = /^[a-z0-9]+(-[a-z0-9]+)*(\.[a-z0-9]+(-[a-z0-9]+)*)*$/;
const CODE = /\.(ts|tsx|mts|cts|js|jsx|mjs|cjs|css|sql)$/;
const PURE = /^libs\/(intervals|mel|deferrals|dispatch|movements|record)\/src\/(?!.*\.spec\.).*\.ts$/;
const MOST_LINES = 300;
// Written so that this file does not match itself.
const SILENCED = new RegExp(`lint-${'disable'}(-next-line|-line)?([^\n*]*)`, 'g');
const LAWFUL =
  /restricted|no-cycle|dynamic-require|explicit-any|consistent-type|no-eval|implied-eval|new-func|default-export|-tests|ts-comment|warning/;

const STORES = /^(libs\/store|apps\/(server|cli))\/src\/(?!.*\.spec\.).*\.ts$/;
/** What makes TypeORM begin and end a transaction of its own on a connection where ours is open. */
const ENDS_A_TRANSACTION =
  /\.\s*(save|softRemove|recover|getRepository|getTreeRepository|withRepository|startTransaction|commitTransaction|useTransaction)\s*[(<]|\bmanager\s*[?!]?\s*\.\s*(remove|transaction)\s*[(<]/;
const MAKES_A_TX = /\bnew Tx\s*\(/;

/** One line may silence one rule of taste by its name; nothing silences a law, a file, or everything. */
function switchesTheLawOff(code: string): boolean {
  return [...code.matchAll(SILENCED)].some(([, reach, rules = '']) => {
    const named = /^ [a-z/-]+/.test(rules);
    return reach !== '-next-line' || !named || LAWFUL.test(rules);
  });
}

const text = (root: string, path: string): string => readFileSync(join(root, path), 'utf8');
const names = (path: string): string[] => path.split('/');
/** Folders below `place` that hold a file; git keeps no empty ones. */
const folders = (root: string, place: string): string[] => [
  ...new Set(
    projectFiles(root).flatMap((path) =>
      path.startsWith(`${place}/`) && path.split('/').length > 2 ? [names(path)[1] ?? ''] : [],
    ),
  ),
];

export const HOUSE_LAWS: HouseLaw[] = [
  {
    law: 'exactly-these-at-the-top',
    advice: 'What does not belong here goes below apps, libs, tests or seed; what is missing comes back.',
    broken: (root) => {
      const ignored = ignoredNames(root);
      const there = readdirSync(root);
      const others = there.filter((name) => !TOP.has(name) && !ignored.has(name) && !name.startsWith('.'));
      return [...others, ...[...TOP].filter((name) => !there.includes(name))];
    },
  },
  {
    law: 'only-known-apps-and-libs',
    advice:
      'Write its arrows into .dependency-cruiser.cjs and its allow-list into .oxlintrc.json first, then its name here.',
    broken: (root) => [
      ...folders(root, 'apps').flatMap((name) => (APPS.includes(name) ? [] : [`apps/${name}`])),
      ...folders(root, 'libs').flatMap((name) => (LIBS.includes(name) ? [] : [`libs/${name}`])),
    ],
  },
  {
    law: 'lib-has-an-index',
    advice: 'Give it src/index.ts: the one way in.',
    broken: (root) =>
      folders(root, 'libs').flatMap((name) =>
        existsSync(join(root, 'libs', name, 'src/index.ts')) ? [] : [`libs/${name}`],
      ),
  },
  {
    law: 'no-vague-name',
    advice:
      'Name it after the thing inside. Nobody knows what belongs into common, core, shared, utils, helpers or base.',
    broken: (root) =>
      projectFiles(root).filter((path) => names(path).some((name) => VAGUE.test(name.split('.')[0] ?? ''))),
  },
  {
    law: 'kebab-case',
    advice: 'Write the name in lower case with hyphens: rectification-window.ts.',
    broken: (root) =>
      projectFiles(root)
        .filter((path) => path.includes('/') && !path.startsWith('.'))
        .filter((path) => names(path).some((name) => !KEBAB.test(name))),
  },
  {
    law: 'at-most-300-lines',
    advice: 'Make two files of it, each after one thing. Only what a program writes (*.generated.ts) may be longer.',
    broken: (root) =>
      projectFiles(root)
        .filter((path) => CODE.test(path) && !/\.generated\.(d\.)?ts$/.test(path))
        .filter((path) => text(root, path).trimEnd().split('\n').length > MOST_LINES),
  },
  {
    law: 'law-is-not-switched-off',
    advice: 'Put the code right, or change the law in its own file, where everybody sees it.',
    broken: (root) => projectFiles(root).filter((path) => CODE.test(path) && switchesTheLawOff(text(root, path))),
  },
  {
    law: 'pure-lib-knows-not-where-it-lies',
    advice: 'A pure lib does not look for files beside itself. Import the content, or take it as an argument.',
    broken: (root) =>
      projectFiles(root).filter((path) => PURE.test(path) && text(root, path).includes('import.meta')),
  },
  {
    law: 'a-transaction-ends-once',
    advice:
      'Ask for one row at a time by tx.insert and tx.change, or manager.insert, update and delete: save, remove and a transaction inside one would commit half of it. Begin one with store.withOperator, or inTransactionOf as the owner: nothing that was sent is lost there.',
    broken: (root) =>
      projectFiles(root)
        .filter((path) => STORES.test(path))
        .filter((path) => {
          const code = text(root, path);
          return ENDS_A_TRANSACTION.test(code) || (MAKES_A_TX.test(code) && path !== 'libs/store/src/store.ts');
        }),
  },
  {
    law: 'ci-run-is-executable',
    advice: 'chmod 0755 .ci/run, and commit the mode.',
    broken: (root) => ((statSync(join(root, '.ci/run')).mode & 0o111) === 0o111 ? [] : ['.ci/run']),
  },
];
