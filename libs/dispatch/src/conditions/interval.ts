import type { DepartureAnswer, RectificationClock } from '#intervals';
import { clockOf, departure } from '../frame/counting.js';
import type { Frame } from '../frame/frame.js';
import { dayIn, millisOf } from '../frame/moment.js';
import type { OpenDefect, Used } from '../situation.js';
import { UU } from '../kleene.js';
import type { ExplainedNode, Truth } from '../verdict.js';
import { judged, partOf, type FixedRule, type Judged, type RowItem } from './item.js';
import { underGrant } from './under-grant.js';

type Said = Pick<DepartureAnswer, 'answer' | 'because'>;

const TRUTH: Record<DepartureAnswer['answer'], Truth> = { holds: 'T', fails: 'F', unknown: 'U' };
const ORDER = ['fails', 'unknown', 'holds'] as const;

export interface Deadline {
  /** Key of the condition. */
  id: string;
  /** The interval in words. */
  text: string;
  /** Whose interval it is. */
  name: string;
  /** Null when nothing is counted, and only a stored end counts. */
  clock: RectificationClock | null;
}

/**
 * The rectification interval is not over at this flight. It counts from the record of this unit's defect, whatever row
 * came later; a row that allows more than one unit down counts from the record of the last of them (or of the first, as
 * the operator settled). A unit that is only considered inoperative has no clock of its own.
 */
export const interval: FixedRule = (item, frame) => {
  const { defect, row, entry, unit } = item;
  if (defect === null) return [];
  const clock = clockInUse(item, defect, frame);
  const text = `category ${row.category}, ${clock.interval}, recorded ${clock.recordedAt}`;
  const deadline = { id: partOf(item, 'interval'), text, name: `${entry.title} ${unit}`, clock };
  // The stored end is that of the row signed before; former-row.ts asks after it.
  const { deadline: _signed, ...unsigned } = defect;
  return [withinDeadline(deadline, defect.insteadOf === undefined ? defect : unsigned, frame)];
};

export function clockInUse(item: RowItem, defect: OpenDefect, frame: Frame): RectificationClock {
  const { row, subEntry, entry } = item;
  const own = clockFrom(item, defect, frame);
  if (row.numberRequired >= subEntry.units.length - 1) return own;
  const records = frame.defects
    .filter((one) => one.entry === entry.number)
    .map((one) => clockFrom(item, one, frame))
    .sort((a, b) => millisOf('recordedAt', a.recordedAt) - millisOf('recordedAt', b.recordedAt));
  const first = frame.situation.settings.pairCountsFrom === 'first-record';
  return (first ? records[0] : records.at(-1)) ?? own;
}

function clockFrom({ row, unit }: RowItem, { recordedAt }: OpenDefect, { situation }: Frame): RectificationClock {
  const interval = row.intervalByUnit?.[unit] ?? row.interval;
  const { tzdb, settings } = situation;
  const window = { category: row.category, recordedAt, base: settings.base, tzdb };
  return clockOf(interval === undefined ? window : { ...window, interval });
}

/** An interval is not over at this flight, or an authority's document carries the flight past the end. */
export function withinDeadline({ id, text, name, clock }: Deadline, defect: OpenDefect, frame: Frame): Judged {
  const { answer, because } = asked(clock, defect, frame);
  const truth = TRUTH[answer];
  const under = truth === 'T' ? null : underGrant(defect, frame);
  if (under === null || (under.truth === 'F' && truth === 'U')) {
    const endsAt = defect.deadline?.endsAt ?? clock?.endsAt ?? null;
    const untils = endsAt === null ? [] : [{ at: endsAt, because: `the interval of ${name} ends` }];
    const tree = truth === 'U' ? { tree: usedLeaf(defect, text, because) } : {};
    return judged('interval', id, text, { now: truth, after: truth }, because, { untils, ...tree });
  }
  const reason = under.truth === 'T' ? `${under.because}: ${because}` : `${because} ${under.because}`;
  const { leaf, until, onlyUnder } = under;
  const tree = leaf === undefined || truth === 'F' ? leaf : eitherOf(usedLeaf(defect, text, because), leaf);
  return judged('interval', id, text, { now: under.truth, after: under.truth }, reason, {
    ...(tree === undefined ? {} : { tree }),
    ...(until === undefined ? {} : { untils: [until] }),
    ...(onlyUnder === undefined ? {} : { onlyUnder }),
  });
}

/** The stored end is the legal truth where there is one; what is counted from use is asked beside it. */
function asked(clock: RectificationClock | null, defect: OpenDefect, frame: Frame): Said {
  const { deadline } = defect;
  const used = clock === null ? {} : withDone(clock, defect, frame);
  if (deadline?.endsAt === undefined && deadline?.lastDay === undefined) {
    if (clock === null) return { answer: 'holds', because: 'It sets no interval.' };
    return departure(clock, frame.leg, used, frame.counting);
  }
  const fixed = beforeStoredEnd(deadline, frame);
  const beside = clock === null ? null : besideStoredEnd(clock);
  if (beside === null) return fixed;
  const rest = departure(beside, frame.leg, used, frame.counting);
  const answer = ORDER.find((one) => one === fixed.answer || one === rest.answer) ?? 'unknown';
  const said = [fixed, rest].filter((one) => one.answer === answer).map(({ because }) => because);
  return { answer, because: said.join(' ') };
}

/** What of a clock is not said by its stored end; null when that says all of it. Of limits of which the later counts, all. */
function besideStoredEnd(clock: RectificationClock): RectificationClock | null {
  if (clock.kind === 'calendar') return null;
  if (clock.joint === 'last-of') return clock;
  const counted = clock.limits.filter(({ unit }) => unit !== 'calendar-days' && unit !== 'hours');
  return counted.length === 0 && clock.within === undefined ? null : { ...clock, limits: counted };
}

/** What was used, and which procedures are done that a shorter limit inside the interval waits for. */
function withDone(clock: RectificationClock, { id, entry, row, used = {} }: OpenDefect, frame: Frame): Used {
  if (clock.kind === 'calendar' || clock.within === undefined) return used;
  const done = clock.within
    .map(({ until }) => until)
    .filter((until) =>
      frame
        .workOf(`${entry}/${row}/${until}`)
        .some(({ doneAt, defect = id }) => doneAt !== undefined && defect === id),
    );
  return { ...used, done };
}

/** The end itself is outside, as in every window; a last day is inside to its end. */
function beforeStoredEnd({ endsAt, lastDay }: NonNullable<OpenDefect['deadline']>, { leg, situation }: Frame): Said {
  const { base, expiryInFlight } = situation.settings;
  const arrival = expiryInFlight === 'arrival-inside';
  const must = arrival ? leg.onBlockAt : leg.offBlockAt;
  const end = lastDay === undefined ? `The interval ends ${endsAt}` : `The last day is ${lastDay} (${base})`;
  if (must === undefined) return { answer: 'unknown', because: `${end}, and when the flight arrives is not known.` };
  const inside =
    endsAt === undefined
      ? dayIn(base, 'flight', must) <= (lastDay ?? '')
      : millisOf('flight', must) < millisOf('deadline.endsAt', endsAt);
  const what = arrival ? 'on blocks' : 'off blocks';
  return {
    answer: inside ? 'holds' : 'fails',
    because: `${end}; ${what} ${must} is ${inside ? 'inside' : 'after'} it.`,
  };
}

function eitherOf(one: ExplainedNode, other: ExplainedNode): ExplainedNode {
  return { node: 'any', text: `${one.text}, or ${other.text}`, ...UU, children: [one, other] };
}

/** What was used of the interval is not known: the question to ask, as a tree of one leaf. */
function usedLeaf({ id }: OpenDefect, text: string, because: string): ExplainedNode {
  return {
    node: 'leaf',
    text,
    ...UU,
    fact: `defect.used[${id}]`,
    operator: 'equal',
    expected: true,
    actual: null,
    known: false,
    because,
    mayAnswer: ['maintenance-control', 'engineer'],
    question: `What has been used of the interval of defect ${id} (${text}), and what will the flight use?`,
  };
}
