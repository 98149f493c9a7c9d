/**
 * Where the intervals of a deferral are expected to end by use. It is a forecast from the planned flights and the mean use
 * of the legs; computed whenever a defect is read, so every movement that came in since is in it. No flight is allowed or
 * refused by it.
 */
import type { DefectLife } from '#deferrals';
import {
  countUsed,
  type CountingSettings,
  type FlightFlown,
  type Leg,
  projectedEnd,
  type ProjectedEnd,
} from '#intervals';
import type { FlightRow } from '#store';

const DAY = 86_400_000;

/** Legs of so many days before now give the mean use. */
export const DAYS_OF_USE = 30;
/** So many planned flights are looked at. */
export const FLIGHTS_AHEAD = 60;

export interface ProjectionContext {
  at: string;
  legs: readonly Leg[];
  planned: readonly FlightRow[];
  counting: Partial<CountingSettings>;
}

/** The earliest of the projected ends of its limits; null where none is counted from use, or nothing can be said. */
export function projectionOf(
  life: DefectLife,
  { at, legs, planned, counting }: ProjectionContext,
): ProjectedEnd | null {
  const done = life.procedures.map(({ work }) => work.slice(work.lastIndexOf('/') + 1));
  const ends = life.limits.flatMap(({ clock }) => {
    if (clock === null || clock.kind === 'calendar') return [];
    const used = { ...countUsed(clock, legs, { ...counting, at }), done };
    return projectedEnd({ clock, at, used, planned: planned.map(flightOf), legs, settings: counting }) ?? [];
  });
  return ends.reduce<ProjectedEnd | null>((first, end) => (first && first.endsAt <= end.endsAt ? first : end), null);
}

/** From when legs are read: the first record, or where the mean use begins. */
export function legsFrom(firstRecord: string, at: string): string {
  const meanFrom = new Date(Date.parse(at) - DAYS_OF_USE * DAY).toISOString();
  return Date.parse(firstRecord) < Date.parse(meanFrom) ? firstRecord : meanFrom;
}

function flightOf({ offBlockAt, onBlockAt, flightMinutes, fromStation, toStation }: FlightRow): FlightFlown {
  return {
    offBlockAt,
    from: fromStation,
    to: toStation,
    ...(onBlockAt === null ? {} : { onBlockAt }),
    ...(flightMinutes === null ? {} : { flightMinutes }),
  };
}
