/** The interval arithmetic of #intervals, asked once for each distinct question. */
import {
  mayDepart,
  rectificationWindow,
  type CountingSettings,
  type PlannedLeg,
  type RectificationClock,
  type Used,
  type WindowInput,
} from '#intervals';
import { remember } from './remember.js';

/** A clock of a category and record, as rectificationWindow gives it. */
export const clockOf = remember(
  ({ category, interval, recordedAt, base, tzdb }: WindowInput) =>
    JSON.stringify([category, interval, recordedAt, base, tzdb]),
  (input) => rectificationWindow(input),
);

/** What the limits of a clock say to a flight, as mayDepart answers it. */
export const departure = remember(
  (
    { limits, recordedAt, base, endsAt, dayOfDiscovery }: RectificationClock,
    leg: PlannedLeg,
    used: Used,
    counting: Partial<CountingSettings>,
  ) => JSON.stringify([limits, recordedAt, base, endsAt, dayOfDiscovery, leg, used, counting]),
  (clock, leg, used, counting) => mayDepart(clock, leg, used, counting),
);
