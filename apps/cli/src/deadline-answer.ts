import type { Extension, ExtensionRefused, RectificationClock } from '#intervals';
import type { Departure } from './deadline/asked-flight.js';
import type { Remaining } from './remaining.js';

/** The end of a rectification interval, with the arithmetic; `endsAt` is exclusive. */
export interface Deadline extends Pick<
  RectificationClock,
  'firstDay' | 'lastDay' | 'startsAt' | 'endsAt' | 'lengthHours' | 'base' | 'tzdb' | 'explanation'
> {
  remaining?: Remaining;
  /** Whether the interval lets the flight of `--depart` leave. */
  departure?: Departure;
  extension?: Omit<Extension, 'window'> | ExtensionRefused;
}
