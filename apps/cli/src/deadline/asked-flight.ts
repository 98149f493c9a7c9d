import {
  mayDepart,
  type CountingSettings,
  type DepartureAnswer,
  type RectificationClock,
  type Used,
} from '#intervals';
import type { Given, Option } from '../options.js';
import { UsageError } from '../usage-error.js';
import { wholeOf } from './pairs.js';

/** What belongs to a flight that asks to leave. */
export const FLIGHT_OPTIONS: readonly Option[] = [
  { name: 'depart', value: 'INSTANT', about: 'does the interval let a flight go off blocks then?' },
  { name: 'arrive', value: 'INSTANT', about: 'when that flight is on blocks' },
  { name: 'minutes', value: 'N', about: 'its minutes in the air' },
  { name: 'block-minutes', value: 'N', about: 'its minutes from block to block' },
  { name: 'from', value: 'STATION', about: 'where it leaves from' },
];

/** Whether the interval lets a flight leave; other conditions of its row are not looked at. */
export type Departure = Pick<DepartureAnswer, 'answer' | 'because'>;

/** What the flight is held against: the clock and the use when it leaves. */
interface Against {
  clock: RectificationClock;
  used: Used;
  settings: CountingSettings;
}

export function departureOf({ options }: Given, against: (depart: string) => Against): Departure | undefined {
  const offBlockAt = options.get('depart');
  const stray = FLIGHT_OPTIONS.find(({ name }) => options.has(name))?.name;
  if (offBlockAt === undefined) {
    if (stray !== undefined)
      throw new UsageError(`--${stray} is of a flight, and --depart does not say when it leaves`);
    return undefined;
  }
  const number = (name: 'minutes' | 'block-minutes') => {
    const text = options.get(name);
    return text === undefined ? undefined : wholeOf(`--${name}`, text);
  };
  const [onBlockAt, from] = [options.get('arrive'), options.get('from')];
  const [flightMinutes, blockMinutes] = [number('minutes'), number('block-minutes')];
  const flight = {
    offBlockAt,
    ...(onBlockAt !== undefined && { onBlockAt }),
    ...(flightMinutes !== undefined && { flightMinutes }),
    ...(blockMinutes !== undefined && { blockMinutes }),
    ...(from !== undefined && { from }),
  };
  const { clock, used, settings } = against(offBlockAt);
  const { answer, because } = mayDepart(clock, flight, used, settings);
  return { answer, because };
}
