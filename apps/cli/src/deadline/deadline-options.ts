import type { Option } from '../options.js';
import { EXTENSION_OPTIONS } from './asked-extension.js';
import { FLIGHT_OPTIONS } from './asked-flight.js';

/** Everything that a deadline may be asked with, in the order in which it is thought of. */
export const DEADLINE_OPTIONS: readonly Option[] = [
  { name: 'category', value: 'A|B|C|D', about: 'the letter that the row gives', must: true },
  {
    name: 'recorded',
    value: 'TIME',
    about: 'when the defect was recorded; without an offset it is local to the base',
    must: true,
  },
  {
    name: 'base',
    value: 'UTC|ZONE',
    about: 'whose days are counted: UTC or a zone such as Europe/Paris',
    must: true,
  },
  {
    name: 'interval',
    value: 'TEXT',
    about:
      'the length of category A: N calendar-days, flight-days, flights, cycles, flight-hours or hours, joined by "or"',
  },
  { name: 'preset', value: 'easa|faa|tcca-2006|tcca-2022', about: 'whose rules are taken; easa when absent' },
  { name: 'settings', value: 'TEXT', about: 'what the operator settled otherwise: "hourClock=block; bases=QVR QHT"' },
  { name: 'deferred', value: 'INSTANT', about: 'when it was deferred, for a clock that begins there' },
  {
    name: 'counts-from',
    value: 'TEXT',
    about: 'from when it counts, where the row states it: an instant, or "410 read 412 at INSTANT"',
  },
  { name: 'engine', value: 'POSITION', about: 'the engine whose hours or cycles count' },
  { name: 'movements', value: 'FILE', about: 'movement messages of the aircraft, to count what was used' },
  { name: 'used', value: 'TEXT', about: 'what was used, told in place of counted: "flightMinutes=7116; done=M1"' },
  { name: 'at', value: 'INSTANT', about: 'what is left at this moment' },
  ...FLIGHT_OPTIONS,
  ...EXTENSION_OPTIONS,
];
