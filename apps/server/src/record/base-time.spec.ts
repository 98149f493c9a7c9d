import fc from 'fast-check';
import { expect, it } from 'vitest';
import { baseTime } from './base-time.js';

it('tells the second 02:20 from the first on the night the clocks go back', () => {
  expect(baseTime('2026-10-25T00:20:00Z', 'Europe/Paris')).toBe('2026-10-25T02:20:00+02:00');
  expect(baseTime('2026-10-25T01:20:00Z', 'Europe/Paris')).toBe('2026-10-25T02:20:00+01:00');
});

it('writes UTC with its offset too', () =>
  expect(baseTime('2026-01-05T00:00:00Z', 'UTC')).toBe('2026-01-05T00:00:00+00:00'));

it('is the same instant in every zone', () => {
  const zones = [
    'UTC',
    'Asia/Kathmandu',
    'America/St_Johns',
    'Pacific/Kiritimati',
    'Australia/Lord_Howe',
    'Europe/Dublin',
  ];
  const seconds = fc.integer({ min: Date.parse('1990-01-01') / 1000, max: Date.parse('2090-01-01') / 1000 });
  fc.assert(
    fc.property(seconds, fc.constantFrom(...zones), (second, zone) => {
      const at = new Date(second * 1000).toISOString();
      expect(Date.parse(baseTime(at, zone))).toBe(second * 1000);
    }),
  );
});
