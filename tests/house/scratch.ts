import { chmodSync, copyFileSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { projectFiles } from './tree.js';

export const projectRoot = fileURLToPath(new URL('../..', import.meta.url)).replace(/[\\/]$/, '');

/**
 * A copy of the project in a temporary folder, to be broken on purpose. It shares the installed packages with the
 * project by a link, and is readable by everybody, because a database started in it as root runs as somebody else.
 */
export interface Scratch {
  root: string;
  write(path: string, text: string, mode?: number): void;
  dispose(): void;
}

export function makeScratch(): Scratch {
  const root = mkdtempSync(join(tmpdir(), 'proviso-scratch-'));
  chmodSync(root, 0o755);
  const into = (path: string): string => {
    mkdirSync(dirname(join(root, path)), { recursive: true });
    return join(root, path);
  };
  for (const path of projectFiles(projectRoot)) copyFileSync(join(projectRoot, path), into(path));
  symlinkSync(join(projectRoot, 'node_modules'), join(root, 'node_modules'), 'dir');
  return {
    root,
    write: (path, text, mode) => {
      writeFileSync(into(path), text);
      if (mode !== undefined) chmodSync(join(root, path), mode);
    },
    dispose: () => rmSync(root, { recursive: true, force: true }),
  };
}
