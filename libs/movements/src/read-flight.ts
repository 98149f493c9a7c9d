import { buildLegs, type Statements } from './build-legs.js';
import type { BuiltLeg } from './compose-leg.js';
import { DepartureDating } from './date-departures.js';
import { dateLanding, dateRampReturn } from './date-landings.js';
import { Undatable } from './dating.js';
import { eventsOf, type DatedStatements, type MovementEvent } from './events.js';
import type { TrayEntry } from './message.js';
import type { DatedMessage } from './dated-message.js';
import type { ReadingSettings } from './settings.js';
import { byArrival, pairOf } from './statements.js';
import { trayEntryFor } from './tray.js';

export interface ReadFlight {
  legs: BuiltLeg[];
  events: MovementEvent[];
  tray: TrayEntry[];
}

/** More messages than any flight has in a day; beyond it somebody is playing, or a loop is sending. */
const mostMessages = 200;

/** Everything that the messages of one flight and day give. Their order does not matter. */
export function readFlight(messages: readonly DatedMessage[], settings: ReadingSettings): ReadFlight {
  if (messages.length > mostMessages) {
    const sentence = `More than ${mostMessages} different messages came for one flight and day; none of them is used.`;
    return { legs: [], events: [], tray: messages.map((message) => trayEntryFor(message, 'too-many', sentence)) };
  }
  const tray: TrayEntry[] = [];
  const attempt = <T>(message: DatedMessage, read: () => T): T | null => {
    try {
      return read();
    } catch (problem) {
      if (!(problem instanceof Undatable)) throw problem;
      tray.push(trayEntryFor(message, problem.reason, problem.message));
      return null;
    }
  };
  const ordered = [...messages].sort((one, other) => byArrival({ message: one }, { message: other }));
  const dating = new DepartureDating(ordered, settings);
  const departures = ordered.flatMap((message) => attempt(message, () => dating.of(message)) ?? []);
  const dated = ordered.map((message): DatedStatements & { message: DatedMessage } => ({
    message,
    departure: departures.find((one) => one.message === message) ?? null,
    landing: attempt(message, () => dateLanding(message, landingKind(message), departures, settings)),
    rampReturn: attempt(message, () => dateRampReturn(message, departures, settings)),
  }));
  const built = buildLegs(statementsOf(dated));
  const events = dated.flatMap((one) => attempt(one.message, () => eventsOf(one.message, one, settings)) ?? []);
  return { legs: built.legs, events, tray: [...tray, ...built.tray] };
}

function landingKind(message: DatedMessage): 'AA' | 'FR' {
  return pairOf(message, 'FR') ? 'FR' : 'AA';
}

function statementsOf(dated: readonly (DatedStatements & { message: DatedMessage })[]): Statements {
  const landings = (kind: 'AA' | 'FR') =>
    dated.flatMap(({ message, landing }) => (landing && landingKind(message) === kind ? landing : []));
  return {
    departures: dated.flatMap(({ departure }) => departure ?? []),
    arrivals: landings('AA'),
    returns: landings('FR'),
    rampReturns: dated.flatMap(({ rampReturn }) => rampReturn ?? []),
    diversions: dated.flatMap(({ message }) => (message.type === 'DIV' ? message : [])),
  };
}
