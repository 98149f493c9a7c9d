import { expect, it } from 'vitest';
import { overlap } from './leg-content.js';

const span = (offBlockAt: string, onBlockAt: string | null = null, landedAt: string | null = null) => ({
  offBlockAt,
  onBlockAt,
  landedAt,
});

it.each([
  ['one within the other', span('07:00', '09:00'), span('07:30', '08:00'), true],
  ['one that ends where the other begins', span('07:00', '09:00'), span('09:00', '10:00'), false],
  ['one apart from the other', span('07:00', '09:00'), span('10:00', '11:00'), false],
  ['one of which only the start is known, within the other', span('07:30'), span('07:00', '09:00'), true],
  ['two that begin at once', span('07:00'), span('07:00'), true],
  ['one on its way when last heard of, and a later one', span('07:00', null, null), span('08:00', '09:00'), false],
  ['one that landed and did not report its blocks', span('07:00', null, '08:30'), span('08:00', '09:00'), true],
])('%s', (_, one, other, expected) => {
  expect(overlap(one, other)).toBe(expected);
  expect(overlap(other, one)).toBe(expected);
});
