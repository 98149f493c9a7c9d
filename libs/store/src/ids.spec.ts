import { expect, it } from 'vitest';
import { newId } from './ids.js';

it('a new key is a UUID of version 7, in small letters', () => {
  expect(newId()).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
});

it('a key begins with the millisecond it was made in', () => {
  const before = Date.now();
  const made = Number.parseInt(newId().replaceAll('-', '').slice(0, 12), 16);
  expect(made).toBeGreaterThanOrEqual(before);
  expect(made).toBeLessThanOrEqual(Date.now());
});

it('no key is made twice', () => {
  expect(new Set(Array.from({ length: 20_000 }, newId)).size).toBe(20_000);
});
