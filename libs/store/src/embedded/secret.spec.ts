import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { derivedPassword, secretIn } from './secret.js';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'proviso-secret-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

it('a secret is made once and is the same afterwards', () => {
  const path = join(folder, 'secret');
  const first = secretIn(path);
  expect(first).toMatch(/^[0-9a-f]{64}$/);
  expect(secretIn(path)).toBe(first);
  expect(secretIn(join(folder, 'another'))).not.toBe(first);
});

it('a secret is readable for its owner alone', () => {
  secretIn(join(folder, 'secret'));
  expect(statSync(join(folder, 'secret')).mode & 0o777).toBe(0o600);
});

it('the password of a role follows from the secret above it, and differs by role and secret', () => {
  expect(derivedPassword('s', 'proviso_app')).toBe(derivedPassword('s', 'proviso_app'));
  expect(derivedPassword('s', 'proviso_app')).not.toBe(derivedPassword('s', 'proviso_owner'));
  expect(derivedPassword('s', 'proviso_app')).not.toBe(derivedPassword('t', 'proviso_app'));
});
