/** The calendar of deadlines: one event for each deferral with a fixed end, under one UID for its whole life. */
import { type Basis, basisInWords } from '#deferrals';
import type { AircraftRow, DefectRow } from '#store';
import { firstWords } from '../defects/short-text.js';
import { defectNumber } from '../defects/views.js';
import { sayDay, sayInstant } from '../deferrals/say-time.js';
import { type ContentLine, instantValue, textValue, writeLines } from './content-lines.js';

const HOUR = 3_600_000;
const CAUTION =
  'Rectify as soon as practicable; this is the latest, not the plan. It supports, and never replaces, the approved MEL.';

export interface Deadline {
  defect: DefectRow & { endsAt: string };
  aircraft: AircraftRow;
  /** Of its MEL entry; null where the MEL names none. */
  title: string | null;
  /** When its last act was entered. */
  changedAt: string;
  /** Of its operator: the zone of its days, and whether it is a demo. */
  base: string;
  invented: boolean;
}

export interface CalendarOf {
  /** "Deadlines of Q-KEA", "Deadlines of Orrinfell Air". */
  name: string;
  deadlines: readonly Deadline[];
}

/**
 * RFC 5545. Times are UTC, so that no zone has to be described; how they read at the base is said in the text. A closed
 * deferral stays as cancelled, so that programs take it out.
 */
export function writeCalendar({ name, deadlines }: CalendarOf): string {
  const described = 'Deferrals with a fixed end. What is counted in flights or hours alone has no end in a calendar.';
  return writeLines([
    ['BEGIN', 'VCALENDAR'],
    ['VERSION', '2.0'],
    ['PRODID', '-//Proviso//Deadlines//EN'],
    ['CALSCALE', 'GREGORIAN'],
    ['X-WR-CALNAME', textValue(name)],
    ['X-WR-CALDESC', textValue(`${noticeOf(deadlines.some(({ invented }) => invented))}${described}`)],
    ['REFRESH-INTERVAL;VALUE=DURATION', 'PT30M'],
    ...deadlines.flatMap(event),
    ['END', 'VCALENDAR'],
  ]);
}

/** The last hour inside the interval: an event at its exclusive end would stand on the day after the last day. */
function event({ defect, aircraft, title, changedAt, base, invented }: Deadline): ContentLine[] {
  const { id, version, endsAt, closedAt } = defect;
  const closed = closedAt !== null;
  const what = `${defectNumber(aircraft, defect)} ${title ?? firstWords(defect.description, 60)}`;
  const summary = closed ? `${what}: closed` : `${what}: ${endWords(defect)}`;
  const said = [
    defect.basis === null ? '' : `Deferred under ${basisInWords(defect.basis as Basis)}.`,
    `To be rectified before ${sayInstant(endsAt, base)}${defect.lastDay === null ? '' : `; last day ${sayDay(defect.lastDay)}`}.`,
    closed ? `Closed ${sayInstant(closedAt, base)}.` : CAUTION,
  ];
  return [
    ['BEGIN', 'VEVENT'],
    ['UID', id],
    ['SEQUENCE', String(version)],
    ['DTSTAMP', instantValue(changedAt)],
    ['LAST-MODIFIED', instantValue(changedAt)],
    ['DTSTART', instantValue(new Date(Date.parse(endsAt) - HOUR).toISOString())],
    ['DTEND', instantValue(endsAt)],
    ['SUMMARY', textValue(summary)],
    ['DESCRIPTION', textValue(`${noticeOf(invented)}${said.filter((part) => part !== '').join('\n')}`)],
    ['STATUS', closed ? 'CANCELLED' : 'CONFIRMED'],
    ['TRANSP', 'TRANSPARENT'],
    ['END', 'VEVENT'],
  ];
}

function noticeOf(invented: boolean): string {
  return invented ? 'INVENTED for demonstration. Never for flight. ' : '';
}

function endWords({ lastDay, endsAt }: Deadline['defect']): string {
  return lastDay === null ? `ends ${sayInstant(endsAt)}` : `last day ${sayDay(lastDay)}`;
}
