import type { RectificationClock } from '#intervals';
import type { Deadline } from '../deadline-answer.js';
import type { Remaining } from '../remaining.js';
import { count, sayDay, sayInstant, sayMinutes } from './say-time.js';

/** A deadline as it is read aloud: the day first, then the arithmetic. */
export function deadlineWords(clock: RectificationClock, deadline: Deadline): string {
  const { explanation, tzdb, remaining, departure, extension } = deadline;
  return [
    endWords(clock),
    'Rectify as soon as practicable; this is the latest, not the plan.',
    `How it is counted: ${explanation}`,
    ...lengthWords(clock),
    ...(remaining === undefined ? [] : remainingWords(remaining)),
    ...(departure === undefined ? [] : [departureWords(departure)]),
    ...(extension === undefined ? [] : [extensionWords(extension)]),
    `Time-zone data ${tzdb}.`,
  ].join('\n');
}

function endWords({ category, interval, base, lastDay, endsAt, limits, kind }: RectificationClock): string {
  const of = `Category ${category}, ${interval.replaceAll('calendar-day', 'calendar day')}`;
  const before = limits.length > 1 ? ' at the latest, or before by use' : '';
  if (endsAt === null) return `${of}: no day can be named yet, it is counted from use.`;
  if (lastDay === null) return `${of}: to be rectified before ${sayInstant(endsAt)}${before}.`;
  const days = base === 'UTC' ? 'UTC' : `days of ${base}`;
  const exclusive = kind === 'calendar' ? `, that is before ${sayInstant(endsAt)}` : '';
  return `${of}: to be rectified by the end of ${sayDay(lastDay)} (${days})${exclusive}${before}.`;
}

function lengthWords({ startsAt, endsAt, lengthMinutes }: RectificationClock): string[] {
  if (endsAt === null || lengthMinutes === null) return [];
  return [`From ${sayInstant(startsAt)} to ${sayInstant(endsAt)}: ${sayMinutes(lengthMinutes)}.`];
}

const DEPARTURES = {
  holds: 'As far as the interval is concerned the flight may leave',
  fails: 'The flight may not leave',
  unknown: 'Whether the flight may leave is not known',
};

function departureWords({ answer, because }: NonNullable<Deadline['departure']>): string {
  return `${DEPARTURES[answer]}: ${because}`;
}

function remainingWords({ at, sentence, isOver, steps = [], movements }: Remaining): string[] {
  const over = isOver === true ? ' The interval is over.' : '';
  const left = `Left at ${sayInstant(at)}: ${sentence}${over}`;
  if (movements === undefined) {
    return isOver === null ? [left, 'Give --movements FILE or --used to have it counted.'] : [left];
  }
  const { registration, legs, incomplete, notUsed } = movements;
  const lack = incomplete === 0 ? '' : `; ${incomplete} with a time that is not known`;
  return [
    left,
    ...(steps.length === 0 ? [] : ['Step by step:', ...steps.map(({ text }) => `  ${text}`)]),
    `Counted from ${count(legs, 'leg')}${registration === null ? '' : ` of ${registration}`}${lack}.`,
    ...(notUsed.length === 0
      ? []
      : [
          'Not counted, so more may have been used:',
          ...notUsed.map(({ line, sentence: why }) => `  line ${line}: ${why}`),
        ]),
  ];
}

function extensionWords(extension: NonNullable<Deadline['extension']>): string {
  if ('refused' in extension) {
    return `Extension refused (${extension.refused}): ${extension.because} ${extension.paragraph}.`;
  }
  const { lastDay, endsAt, explanation, noticeDueAt, paragraph } = extension;
  const notice = noticeDueAt === null ? '' : ` The authority must have been told by ${sayInstant(noticeDueAt)}.`;
  return `Extension possible to the end of ${sayDay(lastDay)}, that is before ${sayInstant(endsAt)}: ${explanation}${notice} ${paragraph}.`;
}
