import { Dating } from './dating.js';
import type { FlownLeg } from './flown-leg.js';
import type { DatedMessage } from './dated-message.js';
import type { ReadingSettings } from './settings.js';
import { elementOf, type Departure, type Landing, type RampReturn } from './statements.js';
import { writeMinute } from './utc-minute.js';

type Happened = 'off-block' | 'airborne' | 'ramp-return' | 'touch-down' | 'on-block';
type Expected =
  'expected-off-block' | 'next-information' | 'expected-airborne' | 'expected-touch-down' | 'expected-on-block';

/** One thing that a message says happened, or is expected. */
export interface MovementEvent {
  kind: Happened | Expected;
  at: string;
  flight: string;
  scheduledOn: string;
  registration: string;
  /** The airport of the event; null when not known, as for an expected touch-down without an airport. */
  airport: string | null;
  /** `in-force` when a leg rests on it, `set-aside` when a correction or a later report took its place. */
  standing: 'in-force' | 'set-aside' | 'expected';
}

export interface DatedStatements {
  departure: Departure | null;
  landing: Landing | null;
  rampReturn: RampReturn | null;
}

/** The events of one message. @throws Undatable for an expected time whose day is not near the flight's */
export function eventsOf(message: DatedMessage, dated: DatedStatements, settings: ReadingSettings): MovementEvent[] {
  const { departure, landing, rampReturn } = dated;
  return [
    ...event(message, 'off-block', departure?.offBlock),
    ...event(message, 'airborne', departure?.airborne),
    ...event(message, 'ramp-return', departure?.rampReturn ?? rampReturn?.end),
    ...event(message, 'touch-down', landing?.touchDown),
    ...event(message, 'on-block', landing?.onBlock),
    ...expectedOf(message, departure?.airborne ?? departure?.start ?? landing?.end ?? null, settings),
  ];
}

function expectedOf(message: DatedMessage, known: number | null, settings: ReadingSettings): MovementEvent[] {
  const dating = new Dating(message, settings);
  const [out, news, off, on, block] = [
    elementOf(message, 'ED'),
    elementOf(message, 'NI'),
    elementOf(message, 'EO'),
    elementOf(message, 'EA'),
    elementOf(message, 'EB'),
  ];
  const takeOff = off && dating.expected(off.time, known);
  const touchDown = on && dating.expected(on.time, takeOff ?? known);
  const leaving = message.type === 'DIV' || elementOf(message, 'AD') !== null;
  const to = on?.airport ?? (leaving ? null : message.station);
  return [
    ...event(message, 'expected-off-block', out && dating.expected(out.time, null)),
    ...event(message, 'next-information', news && dating.expected(news.time, null)),
    ...event(message, 'expected-airborne', takeOff),
    ...event(message, 'expected-touch-down', touchDown, to),
    ...event(message, 'expected-on-block', block && dating.expected(block.time, touchDown ?? known), to),
  ];
}

function event(
  { flight, scheduledOn, registration, station }: DatedMessage,
  kind: MovementEvent['kind'],
  minute: number | null | undefined,
  airport: string | null = station,
): MovementEvent[] {
  if (minute === null || minute === undefined) return [];
  const standing = kind.startsWith('expected') || kind === 'next-information' ? 'expected' : 'set-aside';
  return [{ kind, at: writeMinute(minute), flight, scheduledOn, registration, airport, standing }];
}

/** Each event once, in order, with those that a leg rests on marked as in force. */
export function inForce(events: readonly MovementEvent[], legs: readonly FlownLeg[]): MovementEvent[] {
  const resting = new Set(legs.flatMap(eventsUnder));
  const once = new Map(events.map((one) => [wholeOf(one), one]));
  return [...once.entries()]
    .sort(([one], [other]) => (one < other ? -1 : 1))
    .map(([, one]) => (resting.has(restOf(one, one.kind, one.at)) ? { ...one, standing: 'in-force' } : one));
}

/** What makes an event another one, in the order of their instants. */
function wholeOf({ at, kind, flight, scheduledOn, registration, airport, standing }: MovementEvent): string {
  return `${at} ${kind} ${flight} ${scheduledOn} ${registration} ${airport} ${standing}`;
}

function eventsUnder(leg: FlownLeg): string[] {
  const times: [Happened, string | undefined][] = [
    ['off-block', leg.missing.includes('off-block') ? undefined : leg.offBlockAt],
    ['airborne', leg.airborneAt],
    ['touch-down', leg.landedAt],
    [leg.ending === 'ramp' ? 'ramp-return' : 'on-block', leg.onBlockAt],
  ];
  return times.flatMap(([kind, at]) => (at === undefined ? [] : [restOf(leg, kind, at)]));
}

type Flight = Pick<FlownLeg, 'flight' | 'scheduledOn' | 'registration'>;

function restOf({ flight, scheduledOn, registration }: Flight, kind: string, at: string): string {
  return `${flight} ${scheduledOn} ${registration} ${kind} ${at}`;
}
