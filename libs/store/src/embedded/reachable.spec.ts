import { chmodSync, mkdirSync, mkdtempSync, realpathSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { closedFolder, reachableDataFolder } from './reachable.js';

let root: string;
const stranger = { name: 'stranger', uid: 54_321, gid: 54_321 };

beforeEach(() => {
  root = realpathSync(mkdtempSync(join(tmpdir(), 'proviso-reach-')));
  chmodSync(root, 0o711);
  mkdirSync(join(root, 'home/checkout'), { recursive: true });
});

afterEach(() => rmSync(root, { recursive: true }));

it('a way open to everybody has no closed folder', () => {
  for (const folder of ['home', 'home/checkout']) chmodSync(join(root, folder), 0o711);
  expect(closedFolder(join(root, 'home/checkout'), stranger)).toBeUndefined();
});

it('the first folder that a stranger may not enter is named, however open those below it are', () => {
  chmodSync(join(root, 'home'), 0o700);
  chmodSync(join(root, 'home/checkout'), 0o777);
  expect(closedFolder(join(root, 'home/checkout/data'), stranger)).toBe(join(root, 'home'));
});

it('reading is not entering', () => {
  chmodSync(join(root, 'home'), 0o744);
  expect(closedFolder(join(root, 'home/checkout'), stranger)).toBe(join(root, 'home'));
});

it('what the owner or the group may enter is open to them', () => {
  const { uid, gid } = statSync(join(root, 'home'));
  chmodSync(join(root, 'home'), 0o700);
  chmodSync(join(root, 'home/checkout'), 0o711);
  expect(closedFolder(join(root, 'home/checkout'), { ...stranger, uid })).toBeUndefined();
  expect(closedFolder(join(root, 'home/checkout'), { ...stranger, gid })).toBe(join(root, 'home'));
  chmodSync(join(root, 'home'), 0o710);
  expect(closedFolder(join(root, 'home/checkout'), { ...stranger, gid })).toBeUndefined();
});

it('nothing is closed to the user who runs the database itself', () => {
  chmodSync(join(root, 'home'), 0o700);
  expect(closedFolder(join(root, 'home/checkout'), null)).toBeUndefined();
});

it('the data folder stays where it is wanted if the way is open', () => {
  chmodSync(join(root, 'home'), 0o711);
  chmodSync(join(root, 'home/checkout'), 0o711);
  expect(reachableDataFolder(join(root, 'home/checkout/.proviso'))).toBe(join(root, 'home/checkout/.proviso'));
});
