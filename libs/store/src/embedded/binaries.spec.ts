import { chmodSync, cpSync, existsSync, lstatSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { findBinaries, shippedFolder } from './binaries.js';
import { databaseUser } from './database-user.js';
import { reachableDataFolder } from './reachable.js';

const isRoot = process.getuid?.() === 0;
let folder: string;
let dataFolder: string;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'proviso-programs-'));
  chmodSync(folder, 0o711);
  dataFolder = reachableDataFolder(join(folder, 'data'));
  mkdirSync(dataFolder, { recursive: true, mode: 0o711 });
});

afterAll(() => {
  for (const path of [folder, dataFolder]) rmSync(path, { recursive: true, force: true });
});

/** The packed programs as they lie there when no install script ran: without their links. */
function copyOfShipped(name: string): string {
  const copy = join(folder, name, 'native');
  cpSync(shippedFolder(), copy, { recursive: true, filter: (path) => !lstatSync(path).isSymbolicLink() });
  return copy;
}

it('programs whose links no install script made get them, and run', () => {
  const shipped = copyOfShipped('no-scripts');
  const { postgres } = findBinaries(dataFolder, databaseUser(), shipped);
  expect(postgres).toBe(join(shipped, 'bin/postgres'));
  expect(existsSync(join(shipped, 'lib/libicuuc.so.60'))).toBe(process.platform === 'linux');
});

it('programs that lie where they cannot be read or completed are copied into the data folder, once', () => {
  const shipped = copyOfShipped('closed');
  const closed = isRoot ? shipped : join(shipped, 'lib');
  chmodSync(closed, isRoot ? 0o700 : 0o555);
  for (let start = 1; start <= 2; start += 1) {
    const { postgres } = findBinaries(dataFolder, databaseUser(), shipped);
    expect(postgres).toBe(join(dataFolder, 'programs/bin/postgres'));
  }
  chmodSync(closed, 0o755);
});
