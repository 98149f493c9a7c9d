/**
 * Work that a row wants again and again, as obligations: each time that it was done, that the aircraft left without it,
 * and that it is owed next.
 *
 * It is owed from the signature that put the row in force, for every departure from then on ("once each flight-day",
 * "before each departure", "every 12 hours", "after the first flight, then every 100 flight-hours"). A time that was
 * missed stays missed: work done later is good for what leaves later, and for nothing before it.
 */
import { countUsed, hasFlown, whatIsLeft } from '#intervals';
import type { Repeat } from '#mel';
import type { DefectLife, ProcedureDone } from '../defect-life.js';
import { proceduresOf } from '../deferring/procedures-owed.js';
import { before } from '../instant.js';
import { clockSince, dayIn, goodFor, type Counting, type Goodness } from './good-for.js';
import type { Departure, Obligation } from './obligation.js';

interface Asked extends Goodness {
  departure: Departure;
  by: ProcedureDone | null;
  /** Departures of the same slot are one obligation. */
  slot: string;
}

/**
 * The obligations of every repeated procedure of the basis in force, in order of time; none where nothing is deferred.
 *
 * @param departures flown and planned ones in the order they leave, from the record of the defect on
 * @param at the instant that is asked about, ISO 8601 with offset
 * Throws IntervalInputError when an interval or a leg cannot be read.
 */
export function obligationsOf(
  life: DefectLife,
  departures: readonly Departure[],
  at: string,
  counting: Counting,
): Obligation[] {
  const { deferral } = life;
  if (deferral === null) return [];
  return proceduresOf(deferral.basis).flatMap(({ work, procedure: { repeat = 'once' } }) => {
    if (repeat === 'once') return [];
    const signed = signedFor(life, work);
    const asked = askAll({ repeat, signed, departures, since: deferral.deferredAt, counting });
    const open = slots(asked.filter(({ good }) => good !== 'yes')).map((slot) => openObligation(work, slot));
    const done = signed.map((act) => doneObligation(work, act, asked));
    const planned = open.filter(({ state }) => state === 'due');
    const owed = typeof repeat === 'string' ? planned : planned.slice(0, 1);
    const past = open.filter(({ state }) => state !== 'due');
    const coming = planned.length > 0 ? [] : comingOf(work, repeat, signed, departures, at, counting);
    return [...done, ...past]
      .sort((one, other) => (before(timeOf(one), timeOf(other)) ? -1 : 1))
      .concat(owed, coming);
  });
}

function signedFor({ procedures }: DefectLife, work: string): ProcedureDone[] {
  return procedures
    .filter((done) => done.work === work)
    .sort((one, other) => (before(one.doneAt, other.doneAt) ? -1 : 1));
}

interface Asking {
  repeat: Repeat;
  signed: readonly ProcedureDone[];
  departures: readonly Departure[];
  since: string;
  counting: Counting;
}

function askAll({ repeat, signed, departures, since, counting }: Asking): Asked[] {
  return departures.flatMap((departure, index) => {
    const { offBlockAt } = departure.leg;
    const earlier = departures.slice(0, index);
    if (before(offBlockAt, since)) return [];
    const first = isAfterFirst(repeat) ? (earlier.find(({ leg }) => hasFlown(leg)) ?? null) : undefined;
    if (first === null) return [];
    const able = signed.filter(
      ({ doneAt }) => !before(offBlockAt, doneAt) && (first === undefined || !before(doneAt, first.leg.offBlockAt)),
    );
    const slot = slotOf(repeat, index, offBlockAt, able.length, counting.base);
    return [{ departure, slot, ...bestOf(able, repeat, departure, earlier, counting) }];
  });
}

function isAfterFirst(repeat: Repeat): boolean {
  return typeof repeat === 'object' && 'afterFirstFlightThenEvery' in repeat;
}

function slotOf(repeat: Repeat, index: number, offBlockAt: string, times: number, base: string): string {
  if (repeat === 'each-departure') return String(index);
  return repeat === 'each-flight-day' ? dayIn(offBlockAt, base) : String(times);
}

/** The last time that is good; else the last that may be; else why the last is not. */
function bestOf(
  able: readonly ProcedureDone[],
  repeat: Repeat,
  departure: Departure,
  earlier: readonly Departure[],
  counting: Counting,
): Goodness & { by: ProcedureDone | null } {
  const answers = able.map((by) => ({ by, ...goodFor(by, repeat, departure, earlier, counting) }));
  return (
    answers.findLast(({ good }) => good === 'yes') ??
    answers.findLast(({ good }) => good === 'not-known') ??
    answers.at(-1) ?? { good: 'no', by: null, because: 'It was not done and signed.' }
  );
}

/** Departures in a row that are short of the same time of doing it. */
function slots(open: readonly Asked[]): Asked[][] {
  const keyOf = ({ slot, good, departure }: Asked) => `${slot} ${good} ${departure.flown}`;
  const found = new Map<string, Asked[]>();
  for (const one of open) found.set(keyOf(one), [...(found.get(keyOf(one)) ?? []), one]);
  return [...found.values()];
}

function openObligation(work: string, slot: readonly Asked[]): Obligation {
  const { departure, good, because } = slot[0]!;
  const state = !departure.flown ? 'due' : good === 'no' ? 'missed' : 'not-known';
  return { work, state, before: departure, departures: slot.length, done: null, because };
}

function doneObligation(work: string, act: ProcedureDone, asked: readonly Asked[]): Obligation {
  const served = asked.filter(({ by, good }) => by === act && good === 'yes');
  const late = act.lateReason === undefined ? '' : ` Entered ${act.enteredAt}, late: ${act.lateReason}`;
  return {
    work,
    state: 'done',
    before: served[0]?.departure ?? null,
    departures: served.length,
    done: act,
    because: `Done ${act.doneAt} by ${act.by.name}.${late}`,
  };
}

function timeOf({ done, before: departure }: Obligation): string {
  return done?.doneAt ?? departure?.leg.offBlockAt ?? '';
}

function comingOf(
  work: string,
  repeat: Repeat,
  signed: readonly ProcedureDone[],
  departures: readonly Departure[],
  at: string,
  counting: Counting,
): Obligation[] {
  const last = signed.at(-1);
  if (typeof repeat === 'string' || last === undefined) return [];
  const clock = clockSince(last.doneAt, repeat, counting);
  const legs = departures.flatMap(({ flown, leg }) => (flown ? [leg] : []));
  const { sentence } = whatIsLeft(clock, at, countUsed(clock, legs, { ...counting.counting, at }), counting.counting);
  return [{ work, state: 'coming', before: null, departures: 0, done: null, because: sentence }];
}
