import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** Names that .gitignore keeps out of the project. Every line of it is one plain name, at any depth. */
export function ignoredNames(root: string): Set<string> {
  const lines = readFileSync(join(root, '.gitignore'), 'utf8').split('\n');
  return new Set(['.git', ...lines.map((line) => line.trim()).filter((line) => line !== '')]);
}

/** Every file of the project as a path relative to its root, with `/` between the parts, in code unit order. */
export function projectFiles(root: string): string[] {
  const ignored = ignoredNames(root);
  const below = (folder: string): string[] =>
    readdirSync(join(root, folder), { withFileTypes: true })
      .filter((entry) => !ignored.has(entry.name))
      .flatMap((entry) => {
        const path = folder === '' ? entry.name : `${folder}/${entry.name}`;
        return entry.isDirectory() ? below(path) : [path];
      });
  return below('').sort();
}

/** Source files that the import law must have looked at. */
export function sourceFiles(root: string): string[] {
  return projectFiles(root).filter((path) =>
    /^(apps|libs|seed|tests)\/.*\.(ts|tsx|mts|cts|js|jsx|mjs|cjs)$/.test(path),
  );
}
