import type { MovementCounters } from '#movements';

export interface Year {
  transmissions: { text: string; receivedAt: string }[];
  counters: MovementCounters;
  garbage: number;
  corrected: number;
}

export function yearOfMovements(asked: { aircraft: number; days: number; seed?: number }): Year;
export function markOf(plane: number): string;
