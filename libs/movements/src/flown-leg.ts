import type { CountedLeg } from './counted-leg.js';
import type { Delay } from './elements/element.js';
import { minutesBetween, missingTimes, type LegTime, type LegTimes } from './leg-times.js';
import { writeMinute } from './utc-minute.js';

/** `arrived` (AA), `returned` (FR, flown), `ramp` (RR, not flown), or still `under-way`. */
export type LegEnding = 'arrived' | 'returned' | 'ramp' | 'under-way';

/**
 * One leg as the messages tell it, in the shape that intervals counts.
 *
 * Where off-block is not known, `offBlockAt` holds the first instant that is; where take-off or touch-down is not known,
 * the flight minutes run to off-block or on-block instead, so that they are not understated; every such time is named
 * in `missing`. A leg still under way has flight minutes 0.
 */
export interface FlownLeg extends CountedLeg {
  flight: string;
  /** Scheduled UTC day of the flight: that of its first leg. */
  scheduledOn: string;
  registration: string;
  /** Null when the departure is not known. */
  from: string | null;
  /** Where it arrived; while under way where it is bound for; null when not known. */
  to: string | null;
  ending: LegEnding;
  /** Counted from 1 over the legs of this flight and day, in the order flown. */
  sequence: number;
  /** The airport it was diverted from, and the two-digit reason if one was given. */
  diverted?: { from: string; reason: string | null };
  /** Reasons of a late departure, AHM 730. A 41 links a defect or a deferral to the leg. */
  delays: Delay[];
  missing: LegTime[];
}

/** The counted part of a leg of which at least one time is known. */
export function countedLeg(times: LegTimes, ending: LegEnding): CountedLeg & Pick<FlownLeg, 'missing'> {
  const { offBlock, airborne, touchDown, onBlock } = times;
  const landed = ending === 'arrived' || ending === 'returned' ? 1 : 0;
  return {
    offBlockAt: writeMinute((offBlock ?? airborne ?? touchDown ?? onBlock) as number),
    ...(airborne !== null && { airborneAt: writeMinute(airborne) }),
    ...(touchDown !== null && { landedAt: writeMinute(touchDown) }),
    ...(onBlock !== null && { onBlockAt: writeMinute(onBlock) }),
    blockMinutes: minutesBetween(offBlock ?? airborne, onBlock ?? touchDown),
    flightMinutes: landed ? minutesBetween(airborne ?? offBlock, touchDown ?? onBlock) : 0,
    cycles: landed,
    landings: landed,
    missing: missingTimes(times, ending === 'ramp'),
  };
}
