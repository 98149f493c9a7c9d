import type { Break, NextFlight, NextFlights, Saver } from '#dispatch';
import { sayInstant, sayMinutes } from './say-time.js';
import { CAUTION } from './verdict-words.js';

/** The flights of a day as a controller reads them: each with its answer, the first that breaks, and what would save it. */
export function nextFlightsWords(told: NextFlights, aircraft: string, notice?: string): string {
  const { flights, kept, breaks, savers, saversComplete, shownBest } = told;
  const blocks = [
    [`${aircraft}: ${kept} of ${flights.length} flights can be flown as planned, as far as is known.`],
    ...flights.map(flightLines),
    breaks === null ? [] : [breakLine(breaks)],
    savers.length === 0 ? [] : [saversComplete ? 'What would save it' : 'What would save it (perhaps others)'],
    savers.map(saverLine),
    shownBest ? [] : ['The search for rows was given up at its budget of steps, so a better choice may exist.'],
    [`Not looked at: ${(flights[0]?.verdict.notLookedAt ?? []).join('; ')}.`],
    [...(notice === undefined ? [] : [notice]), CAUTION],
  ];
  return blocks
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n');
}

function flightLines({ flight, verdict, ifFlown, left, repeats, lateMinutes }: NextFlight): string[] {
  const after = ifFlown === null ? '' : ` (if ${ifFlown} is flown after all)`;
  const late = lateMinutes === null || lateMinutes === 0 ? [] : [`late by ${sayMinutes(lateMinutes)} for its work`];
  return [
    `${flight.number ?? flight.id} ${flight.from} to ${flight.to}, off blocks ${sayInstant(flight.offBlockAt)}: ${verdict.words}${after}`,
    ...[
      ...(verdict.verdict === 'may-fly' || verdict.verdict === 'nothing-open' ? [] : verdict.reasons),
      ...verdict.questions.map(({ question }) => question),
      ...repeats.map(({ text, station, from }) => `owed again at ${station} from ${sayInstant(from)}: ${text}`),
      ...late,
      ...left.map(({ defect, sentence }) => `${defect}: ${sentence}`),
    ].map((line) => `  - ${line}`),
  ];
}

function breakLine({ flight, station, verdict }: Break): string {
  return `${verdict === 'not-settled' ? 'First not settled' : 'First to break'}: ${flight} at ${station}.`;
}

function saverLine({ text, stops, minutes, keeps }: Saver): string {
  const [last] = stops;
  const ground = last === undefined ? '' : `; ${sayMinutes(last.groundMinutes)} on the ground at ${last.station}`;
  const work = stops.length === 0 || minutes === null ? '' : `; ${sayMinutes(minutes)} of work`;
  return `  - ${text} Then ${keeps} flights are kept${ground}${work}.`;
}
