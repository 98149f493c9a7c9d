/** A correction in words: what reads otherwise, and what that moves. Nothing moves without being said before it is signed. */
import {
  type Act,
  correctionMoves,
  type CorrectableField,
  type DefectLife,
  FIELD_WORDS,
  type LimitMoved,
  onItsFlight,
  type WhenFound,
} from '#deferrals';
import { presetOf } from '#intervals';
import { sayDay, sayInstant } from '../deferrals/say-time.js';
import type { RepeatLine } from '../defects/repeats.js';
import { firstWords } from '../defects/short-text.js';
import { wordsOfAct } from '../defects/words-of-act.js';
import { instantFault } from '../http/fields.js';
import { Problem } from '../http/problem.js';
import type { OperatorSettings } from '../people/operator-settings.js';
import { mostOf } from './correctable.js';
import { isTime, valueInWords } from './value-words.js';

/** @throws Problem when a time is none, a system is no two digits, or the words are longer than what they stand for */
export function admitWords(field: CorrectableField, now: string): void {
  if (field === 'system' && !/^\d\d$/.test(now)) throw misfit('must be two digits');
  if (now.length > mostOf(field)) throw misfit(`has ${mostOf(field)} characters at most`);
  const fault = isTime(field) ? instantFault(now) : null;
  if (fault !== null) throw misfit(fault);
}

function misfit(reason: string): Problem {
  return new Problem('invalid-input', `What it should read ${reason}.`, { errors: [{ pointer: '/now', reason }] });
}

const MOST_QUOTED = 400;

/** `In the entry "Rectified: ...", the part number reads "N" in place of "O".` A long text is quoted by its beginning. */
export function readsInPlaceOf(act: Act, field: CorrectableField, [was, now]: [string | null, string], base: string) {
  return `${whereOf(act)}${FIELD_WORDS[field]} reads ${quoted(field, now, base)} in place of ${quoted(field, was, base)}.`;
}

/** `In the entry "Deferred under ...", the unit reads "L" and not "R".` */
export function staysInWords(act: Act, field: CorrectableField, [was, now]: [string | null, string], base: string) {
  return `${whereOf(act)}${FIELD_WORDS[field]} reads ${quoted(field, was, base)} and not ${quoted(field, now, base)}.`;
}

function whereOf(act: Act): string {
  return act.kind === 'written-up' ? '' : `In the entry "${firstWords(wordsOfAct(act), 120)}", `;
}

function quoted(field: CorrectableField, value: string | null, base: string): string {
  const words = valueInWords(field, value, base);
  if (words === null) return 'nothing';
  return isTime(field) ? words : `"${firstWords(words, MOST_QUOTED)}"`;
}

/** What an earlier log time or another flight phase moves. */
export function movesInWords(
  life: DefectLife,
  field: CorrectableField,
  now: string,
  { deferral }: OperatorSettings,
): string {
  if (field === 'whenFound') return foundMoves(now as WhenFound, deferral);
  const moved = field === 'recordedAt' ? correctionMoves(life, now, deferral) : null;
  return moved === null ? 'No limit moves.' : movedWords(moved, deferral.base);
}

/** Where the MEL stops for that flight; the answer before the next departure is owed in any case. 14 CFR 121.563. */
function foundMoves(now: WhenFound, { preset }: OperatorSettings['deferral']): string {
  const holds = onItsFlight(now, presetOf(preset).melStops);
  return `For the flight on which it was found this holds then: ${holds?.words ?? 'not known.'} No limit moves, and an answer before the next departure is owed as before.`;
}

function movedWords({ before, after, counted, extended }: LimitMoved, base: string): string {
  const days =
    before.lastDay !== null && after.lastDay !== null && before.lastDay !== after.lastDay
      ? `The last day moves from ${sayDay(before.lastDay)} to ${sayDay(after.lastDay)}.`
      : before.endsAt === after.endsAt
        ? 'The fixed end of its limits stays.'
        : `The end moves from ${end(before.endsAt, base)} to ${end(after.endsAt, base)}.`;
  const more = [
    ...(counted ? ['What is counted from the use of the aircraft is counted anew from that time.'] : []),
    ...(extended ? ['The extension that was granted falls away.'] : []),
  ];
  return [days, ...more].join(' ');
}

/** What comes again and is owed with a time corrected, and was not before; and what was missed or not known, and is not now. */
export function owedWords(before: readonly RepeatLine[], after: readonly RepeatLine[]): string {
  const owed = after.filter(({ state }) => state === 'due' || state === 'missed' || state === 'not-known');
  const more = onlyIn(owed, before);
  const open = before.filter(({ state }) => state === 'missed' || state === 'not-known');
  const gone = onlyIn(open, after);
  const judged =
    more.length === 0
      ? 'nothing is owed that was not before.'
      : `this is owed then or was missed: ${more.join('; ')}.`;
  const no = gone.length === 0 ? '' : ` This stood so before and no longer does: ${gone.join('; ')}.`;
  return `No limit moves. How long it is good for counts from that time. Judged so, ${judged}${no}`;
}

function onlyIn(lines: readonly RepeatLine[], others: readonly RepeatLine[]): string[] {
  const known = new Set(others.map(owedInWords));
  return [...new Set(lines.map(owedInWords))].filter((words) => !known.has(words));
}

function owedInWords({ text, words, flight, departures }: RepeatLine): string {
  const of = flight === null ? '' : `, flight ${flight.number ?? 'without a number'} from ${flight.from}`;
  const more = departures > 1 ? ` and ${departures - 1} more` : '';
  return `"${firstWords(text, 120)}": ${words}${of}${more}`;
}

const end = (at: string | null, base: string): string => (at === null ? 'no fixed end' : sayInstant(at, base));

/** What the aircraft is judged to be with another unit down. */
export function judgedWords(fails: readonly string[], left: readonly string[]): string {
  const judged =
    fails.length === 0 ? 'Judged so, nothing fails that held before.' : `Judged so, this fails: ${fails.join(' ')}`;
  return left.length === 0
    ? judged
    : `${judged} What is left on the aircraft for it stays written as it is, and is corrected in its register: ${left.join('; ')}.`;
}
