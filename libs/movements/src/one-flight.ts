import type { BuiltLeg } from './compose-leg.js';
import type { DatedMessage } from './dated-message.js';
import type { FlownLeg } from './flown-leg.js';
import type { MovementMessage } from './message.js';
import { byArrival } from './statements.js';

/** A second delivery changes nothing: the same text about the same day counts from its first receipt. */
export function eachOnce(messages: readonly DatedMessage[]): DatedMessage[] {
  const once = new Map<string, DatedMessage>();
  for (const message of [...messages].sort((one, other) => byArrival({ message: one }, { message: other }))) {
    const key = `${message.scheduledOn} ${message.text}`;
    if (!once.has(key)) once.set(key, message);
  }
  return [...once.values()];
}

export function byFlight(messages: readonly DatedMessage[]): DatedMessage[][] {
  const flights = new Map<string, DatedMessage[]>();
  for (const message of messages) {
    const key = `${message.flight} ${message.scheduledOn}`;
    const flight = flights.get(key);
    if (flight) flight.push(message);
    else flights.set(key, [message]);
  }
  return [...flights.values()];
}

/** By aircraft, in the order flown. */
export function inOrderFlown(legs: readonly BuiltLeg[]): BuiltLeg[] {
  return legs
    .map((built) => ({ key: legKey(built.leg), built }))
    .sort((one, other) => (one.key < other.key ? -1 : 1))
    .map(({ built }) => built);
}

function legKey({ registration, offBlockAt, flight, sequence }: FlownLeg): string {
  return `${registration} ${offBlockAt} ${flight} ${String(sequence).padStart(4, '0')}`;
}

/** A message as whoever asked for it gets it. */
export function withoutDating({ receipt: _receipt, scheduledDay: _day, ...message }: DatedMessage): MovementMessage {
  return message;
}
