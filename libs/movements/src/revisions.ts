import type { Arrival } from './arrivals.js';
import { nameOf, type Attempt } from './attempts.js';
import type { TrayEntry } from './message.js';
import type { DatedMessage } from './dated-message.js';
import { trayEntryFor } from './tray.js';

interface Said {
  message: DatedMessage;
}

/** Reports that differ from the one that counts though nobody sent a correction. They are set aside, and shown. */
export function revisionsOf(attempts: readonly Attempt[], arrivals: readonly Arrival[]): TrayEntry[] {
  return [
    ...attempts.flatMap(({ departures }) => [
      ...differing(departures, 'off-block', ({ offBlock }) => offBlock),
      ...differing(departures, 'airborne', ({ airborne }) => airborne),
    ]),
    ...arrivals.flatMap(({ landings }) => [
      ...differing(landings, 'touch-down', ({ touchDown }) => touchDown),
      ...differing(landings, 'on-block', ({ onBlock }) => onBlock),
    ]),
  ];
}

function differing<S extends Said>(said: readonly S[], what: string, read: (one: S) => number | null): TrayEntry[] {
  const told = said.filter((one) => read(one) !== null);
  const [counting] = told;
  if (!counting || counting.message.correction) return [];
  const others = told.filter((one) => read(one) !== read(counting));
  return others.map(({ message }) =>
    trayEntryFor(
      message,
      'conflict',
      `${nameOf(message)} has another ${what} in a later message that is no correction.`,
    ),
  );
}
