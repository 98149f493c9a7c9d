/** The server's time on a device that sleeps, or whose clock is wrong or is set while a page is open. */
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { clockMoved, noteServerTime, serverAtLeast, serverNow } from './server-clock.js';

const TOLD = '2026-11-25T09:00:00.000Z';
const seconds = () => (serverAtLeast() - Date.parse(TOLD)) / 1000;

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['Date', 'performance'] });
  vi.setSystemTime('2031-01-01T00:00:00Z');
  noteServerTime(TOLD);
});
afterEach(() => void vi.useRealTimers());

it('counts on from what the server told, however wrong the clock of the device is', () => {
  vi.advanceTimersByTime(90_000);
  expect([serverNow(), seconds(), clockMoved()]).toEqual(['2026-11-25T09:01:30.000Z', 90, false]);
});

it('is never too early where the clock of the device was set ahead, and knows that it must ask again', () => {
  vi.advanceTimersByTime(5_000);
  vi.setSystemTime(Date.now() + 3_600_000);
  expect([seconds(), clockMoved()]).toEqual([5, true]);
});

it('does not run backwards where it was set back', () => {
  vi.advanceTimersByTime(5_000);
  vi.setSystemTime(Date.now() - 3_600_000);
  expect([seconds(), clockMoved()]).toEqual([0, true]);
});

it('is right again once the server told its time anew', () => {
  vi.setSystemTime(Date.now() + 3_600_000);
  noteServerTime('2026-11-25T10:00:00.000Z');
  vi.advanceTimersByTime(1_000);
  expect([seconds(), clockMoved()]).toEqual([3601, false]);
});

it('keeps what it knew where the server told no time', () => {
  noteServerTime('no time');
  vi.advanceTimersByTime(2_000);
  expect(seconds()).toBe(2);
});
