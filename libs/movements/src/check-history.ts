import { nameOf } from './attempts.js';
import type { BuiltLeg } from './compose-leg.js';
import type { TrayEntry } from './message.js';
import { trayEntryFor } from './tray.js';

/**
 * Looks at the legs of one aircraft across its flights. An aircraft that departs again has landed before: its leg then
 * counts as a cycle even if the arrival was never reported. Two legs at once cannot be. Both go to the tray.
 */
export function checkHistory(legs: readonly BuiltLeg[]): TrayEntry[] {
  return legs.flatMap((built, index) => {
    const next = legs[index + 1];
    if (!next || next.leg.registration !== built.leg.registration) return [];
    return built.leg.ending === 'under-way' ? [withoutArrival(built, next)] : overlapping(built, next);
  });
}

function withoutArrival({ leg, message }: BuiltLeg, next: BuiltLeg): TrayEntry {
  if (leg.airborneAt !== undefined) {
    leg.cycles = 1;
    leg.landings = 1;
  }
  const known = leg.airborneAt === undefined ? 'it is not known whether it flew' : 'its hours are not known';
  return trayEntryFor(
    message,
    'no-arrival',
    `${nameOf(message)} departed again at ${next.leg.offBlockAt} and ${known}.`,
  );
}

function overlapping({ leg, message }: BuiltLeg, next: BuiltLeg): TrayEntry[] {
  const end = leg.onBlockAt ?? leg.landedAt;
  if (end === undefined || end <= next.leg.offBlockAt) return [];
  const sentence = `${nameOf(message)} was still on its way at ${next.leg.offBlockAt}, when its next leg begins.`;
  return [trayEntryFor(message, 'conflict', sentence)];
}
