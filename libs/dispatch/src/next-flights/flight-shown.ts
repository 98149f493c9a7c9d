/** A flight as it is told back: its parts in one order, in whatever order they were written down. */
import type { PlannedFlight } from '../situation.js';
import { byCode } from '../units/unit.js';

const PARTS = [
  'id',
  'number',
  'from',
  'to',
  'offBlockAt',
  'onBlockAt',
  'flightMinutes',
  'blockMinutes',
  'facts',
] as const satisfies readonly (keyof PlannedFlight)[];

export function flightShown(flight: PlannedFlight): PlannedFlight {
  const given = PARTS.filter((part) => flight[part] !== undefined);
  return Object.fromEntries(given.map((part) => [part, inOrder(flight[part])])) as unknown as PlannedFlight;
}

function inOrder(value: unknown): unknown {
  if (typeof value !== 'object' || value === null) return value;
  const parts = Object.entries(value).sort(([a], [b]) => byCode(a, b));
  return Object.fromEntries(parts.map(([key, part]) => [key, inOrder(part)]));
}
