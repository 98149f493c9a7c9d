import type { MovementCounters, Transmission } from '#movements';

interface Asked {
  aircraft: number;
  days: number;
  seed?: number;
}

interface Truth {
  counters: MovementCounters;
  garbage: number;
  corrected: number;
}

export function yearOfMovements(asked: Asked): Truth & { transmissions: Transmission[] };

export function movementsByDay(asked: Asked & { truth: Partial<Truth> }): Generator<Transmission[], void>;

export function markOf(plane: number): string;
