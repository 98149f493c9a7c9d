import type {
  ItemAnswer,
  NowAfter,
  PlannedFlight,
  Question,
  RefusedRow,
  Situation,
  Verdict,
  WorkStep,
} from '#dispatch';
import type { Role } from '#mel';
import { sayInstant, sayMinutes } from './say-time.js';

export const CAUTION =
  'This supports, and never replaces, the approved MEL, the maintenance manual, the commander and licensed certifying ' +
  'staff; local regulation prevails.';

/** What stands beside the answer itself. */
export interface Beside {
  notice?: string | undefined;
  /** Further paragraphs, each its lines. */
  more?: readonly (readonly string[])[];
}

/** A verdict as a technician and a controller read it: the answer, why, what to do, whom to ask, and what it leaves out. */
export function verdictWords(verdict: Verdict, { flight }: Situation, { notice, more = [] }: Beside = {}): string {
  const { reasons, items, work, questions, refusedRows, notLookedAt } = verdict;
  const blocks = [
    [
      `${verdict.words.toUpperCase()}: ${verdict.aircraft}, ${flightWords(flight)}, as things stood ${sayInstant(verdict.at)}.`,
    ],
    block('Why', reasons),
    block('Work to do', work.length === 0 ? [] : [...work.map(workWords), totalWords(verdict)], ''),
    block('Questions', questions.map(questionWords)),
    block('Rows', items.flatMap(itemWords), ''),
    block(
      'Rows that cannot be used',
      refusedRows.map((row) => refusedWords(row, items)),
    ),
    ...more,
    block('Not looked at', notLookedAt),
    [validWords(verdict), melWords(verdict, notice), CAUTION],
  ];
  return blocks
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n');
}

function validWords({ validUntil }: Verdict): string {
  if (validUntil === null) return 'Valid until anything above changes.';
  const { at, because } = validUntil;
  return `Valid until ${sayInstant(at)} (${withoutStop(because)}), or until anything above changes before.`;
}

function melWords({ mel }: Verdict, notice?: string): string {
  const read = mel === null ? 'none' : `${mel.document}, revision ${mel.revision}`;
  return `MEL: ${read}.${notice === undefined ? '' : ` ${notice}`}`;
}

function block(title: string, lines: readonly string[], mark = '- '): string[] {
  return lines.length === 0 ? [] : [title, ...lines.map((line) => `  ${mark}${line}`)];
}

function flightWords(flight: PlannedFlight | null): string {
  if (flight === null) return 'no flight';
  const { id, number, from, to, offBlockAt } = flight;
  return `flight ${number ?? id} ${from} to ${to}, off blocks ${sayInstant(offBlockAt)}`;
}

/** The item with its row, and how each condition of the row stands; why one does not hold stands above, under Why. */
function itemWords({ entry, title, unit, row, cause, perhaps, conditions, ...pair }: ItemAnswer): string[] {
  const by =
    cause.kind === 'failed' ? cause.defect : `considered inoperative by ${cause.by.entry}, row ${cause.by.row}`;
  const under = row === null ? 'no row' : `row ${row}`;
  const maybe = perhaps ? ', if it is this one' : '';
  return [
    `${entry} ${title} ${unit}, ${under} (${by}${maybe}): ${standing(pair)}`,
    ...conditions.map((one) => {
      const how = standing(one);
      const why = how === WORDS.T ? ` - ${withoutStop(one.because)}` : '';
      return `  ${how}: ${withoutStop(one.text)}${why}`;
    }),
  ];
}

function refusedWords({ entry, unit, row, because }: RefusedRow, items: readonly ItemAnswer[]): string {
  const title = items.find((item) => item.entry === entry)?.title ?? '';
  return `${[entry, title, unit].filter(Boolean).join(' ')}, row ${row}: ${because.join('; ')}`;
}

/** Of a row and of its conditions alike: "may fly" is said of the aircraft alone. */
const WORDS = { T: 'holds', W: 'holds after work', U: 'not settled', F: 'does not hold' };

function standing({ now, after }: NowAfter): string {
  if (after === 'F') return WORDS.F;
  if (now === 'T') return WORDS.T;
  return now === 'F' && after === 'T' ? WORDS.W : WORDS.U;
}

function workWords({ text, minutes, by, needsPersonAtStation, defect, step, needs }: WorkStep): string {
  const long = minutes === null ? 'no time given' : sayMinutes(minutes);
  const station = needsPersonAtStation ? ', needs somebody at the station' : '';
  const after = needs.length === 0 ? '' : `, after ${needs.join(' and ')}`;
  return `${step}. ${withoutStop(text)}${defect === undefined ? '' : ` (${defect})`}: ${long}, by ${role(by)}${station}${after}`;
}

function totalWords({ workMinutes, earliestOffBlockAt, lateMinutes }: Verdict): string {
  const all = workMinutes === null ? 'time not known' : sayMinutes(workMinutes);
  const off = earliestOffBlockAt === null ? '' : `; earliest off blocks ${sayInstant(earliestOffBlockAt)}`;
  const late = lateMinutes ? `, late by ${sayMinutes(lateMinutes)}` : '';
  return `all of it, one thing after another: ${all}${off}${late}`;
}

function questionWords({ question, mayAnswer, neededBy }: Question): string {
  const who = mayAnswer.length === 0 ? 'nobody is named to answer' : `ask ${mayAnswer.map(role).join(' or ')}`;
  return `${question} (${who}; for ${neededBy.join(', ')})`;
}

const role = (name: Role): string => name.replace('mel-', 'MEL-').replaceAll('-', ' ');
const withoutStop = (text: string): string => text.trim().replace(/[.\s]+$/, '');
