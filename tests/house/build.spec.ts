import { execFile } from 'node:child_process';
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { projectRoot } from './scratch.js';

describe('the build', () => {
  let root: string;
  beforeEach(() => {
    root = mkdtempSync(join(tmpdir(), 'proviso-build-'));
    for (const path of [
      '.config/build.mjs',
      'apps/tsconfig.build.json',
      'tsconfig.json',
      'package.json',
      'package-lock.json',
    ]) {
      mkdirSync(dirname(join(root, path)), { recursive: true });
      copyFileSync(join(projectRoot, path), join(root, path));
    }
    symlinkSync(join(projectRoot, 'node_modules'), join(root, 'node_modules'), 'dir');
    source('export const answer = 1;');
  });
  afterEach(() => rmSync(root, { recursive: true }));

  const output = (): string => join(root, 'dist/libs/mel/src/index.js');
  const lock = (): string => join(root, '.test-output/build.lock');
  function source(code: string): void {
    mkdirSync(join(root, 'libs/mel/src'), { recursive: true });
    writeFileSync(join(root, 'libs/mel/src/index.ts'), code);
  }
  const build = (): Promise<{ code: number; said: string }> =>
    new Promise((resolve) => {
      const child = execFile(process.execPath, ['.config/build.mjs', '--if-stale'], { cwd: root }, (_error, stdout) =>
        resolve({ code: child.exitCode ?? -1, said: stdout }),
      );
    });
  const made = { code: 0, said: 'build: dist is made anew\n' };
  const asItWas = { code: 0, said: '' };

  it('is made once when several ask for it at the same time, and leaves no lock', async () => {
    const all = await Promise.all([1, 2, 3].map(build));
    expect(all.sort((a, b) => b.said.length - a.said.length)).toEqual([made, asItWas, asItWas]);
    expect(await build()).toEqual(asItWas);
    expect(existsSync(lock())).toBe(false);
  });

  it('is made anew when a source has changed, without what is there no more', async () => {
    writeFileSync(join(root, 'libs/mel/src/old.ts'), 'export const old = 1;');
    expect(await build()).toEqual(made);
    rmSync(join(root, 'libs/mel/src/old.ts'));
    source('export const answer = 2;');
    expect(await build()).toEqual(made);
    expect(readFileSync(output(), 'utf8')).toContain('answer = 2');
    expect(existsSync(join(root, 'dist/libs/mel/src/old.js'))).toBe(false);
  });

  it('fails on a type error, and fails again when asked again', async () => {
    source("export const answer: number = 'one';");
    expect((await build()).code).toBe(1);
    expect((await build()).code).toBe(1);
    expect(existsSync(lock())).toBe(false);
  });

  it('does not wait for a builder that was killed', async () => {
    mkdirSync(dirname(lock()));
    const dead = execFile(process.execPath, ['-e', '']);
    await new Promise((resolve) => dead.on('close', resolve));
    writeFileSync(lock(), String(dead.pid));
    expect(await build()).toEqual(made);
    expect(existsSync(output())).toBe(true);
  });
});
