/**
 * One piece of work owed by a row: a procedure or its placard. It is owed from the day the row is used, is done and
 * signed, stays valid as long as its repeat rule says, and is then owed anew until the item is closed.
 */
import type { Procedure, Repeat } from '#mel';
import { anyOf, TT } from '../kleene.js';
import type { OpenDefect, WorkState } from '../situation.js';
import type { NowAfter, Truth } from '../verdict.js';
import { clockOf, departure } from './counting.js';
import type { Frame } from './frame.js';
import { dayIn, millisOf } from './moment.js';
import type { Until } from './until.js';
import { Unknown } from '../evaluate/marker.js';

export interface WorkAnswer extends NowAfter {
  because: string;
  until?: Until;
  /** Set when whether it can be done hangs on a fact that is not known. */
  askFact?: string;
}

/** A standing of done work: still good for this departure, used up, or not known. */
interface Standing {
  valid: Truth;
  because: string;
  until?: Until;
}

const PERSON = 'flight.authorisedPersonAtStation';

/** `procedure` is null for a placard; `defect` is null for a unit that is only considered inoperative. */
export function workAnswer(
  frame: Frame,
  work: string,
  procedure: Procedure | null,
  defect: OpenDefect | null,
): WorkAnswer {
  const records = recordsOf(frame, work, defect);
  const standing = standingOf(frame, records, procedure?.repeat ?? 'once', defect);
  if (standing.valid === 'T') return { ...TT, ...standing };
  const possible = possibility(frame, records, procedure);
  const because = possible.because === undefined ? standing.because : `${standing.because}; ${possible.because}`;
  return {
    now: standing.valid,
    after: anyOf([standing.valid, possible.truth]),
    because,
    ...(possible.askFact === undefined ? {} : { askFact: possible.askFact }),
  };
}

/** A record that names no defect counts only where one open defect alone can be meant. */
function recordsOf(frame: Frame, work: string, defect: OpenDefect | null): readonly WorkState[] {
  const records = frame.workOf(work);
  if (records.length === 0) return records;
  const [entry, row] = work.split('/');
  const users = frame.defects.filter((one) => one.entry === entry && one.row === row);
  return records.filter((record) =>
    record.defect === undefined ? users.length < 2 : defect === null || record.defect === defect.id,
  );
}

function standingOf(
  frame: Frame,
  records: readonly WorkState[],
  repeat: Repeat,
  defect: OpenDefect | null,
): Standing {
  const waits = waitsForFirstFlight(repeat, defect);
  if (waits?.valid === 'T') return waits;
  const done = records.filter((record) => record.doneAt !== undefined);
  const standings = done.map(
    (record) => beforeFirstFlight(record, repeat, defect) ?? standingOfRecord(frame, record, repeat),
  );
  const best =
    standings.findLast(({ valid }) => valid === 'T') ??
    standings.findLast(({ valid }) => valid === 'U') ??
    (waits?.valid === 'U' ? waits : standings.at(-1));
  return best ?? { valid: 'F', because: 'it is not done and signed' };
}

/** An inspection after the first flight is not owed before that flight. */
function waitsForFirstFlight(repeat: Repeat, defect: OpenDefect | null): Standing | null {
  if (typeof repeat === 'string' || !('afterFirstFlightThenEvery' in repeat)) return null;
  const flights = defect?.used?.flights;
  if (flights === undefined) {
    return { valid: 'U', because: 'it is owed after the first flight, and whether that was flown is not known' };
  }
  return flights === 0 ? { valid: 'T', because: 'it is owed after the first flight, which is not flown yet' } : null;
}

/**
 * What is owed after the first flight is not done by an inspection made before it: as many flights were flown since that
 * inspection as since the item was deferred.
 */
function beforeFirstFlight(
  { doneAt, usedSince }: WorkState,
  repeat: Repeat,
  defect: OpenDefect | null,
): Standing | null {
  if (typeof repeat === 'string' || !('afterFirstFlightThenEvery' in repeat)) return null;
  const [since, flights] = [usedSince?.flights, defect?.used?.flights];
  if (since === undefined || flights === undefined) {
    return { valid: 'U', because: `whether it was done after the first flight, on ${doneAt ?? ''}, is not known` };
  }
  if (since < flights) return null;
  return { valid: 'F', because: `it is owed after the first flight and was done before it, on ${doneAt ?? ''}` };
}

function standingOfRecord(frame: Frame, record: WorkState, repeat: Repeat): Standing {
  const { flight, settings } = frame.situation;
  const doneAt = record.doneAt ?? '';
  if (millisOf('work.doneAt', doneAt) > frame.at)
    return { valid: 'F', because: `it is signed for ${doneAt}, which is still to come` };
  if (record.validUntil !== undefined && millisOf('work.validUntil', record.validUntil) < frame.departs) {
    return {
      valid: 'F',
      because: `it was done ${doneAt} and valid until ${record.validUntil}, which is before departure`,
    };
  }
  const until =
    record.validUntil === undefined
      ? {}
      : { until: { at: record.validUntil, because: `${record.work} is valid until then` } };
  if (repeat === 'once') return { valid: 'T', because: `it was done and signed ${doneAt}`, ...until };
  if (repeat === 'each-departure') {
    const same = flight !== null && record.forFlight === flight.id;
    return same
      ? { valid: 'T', because: `it was done and signed ${doneAt} for this flight`, ...until }
      : {
          valid: 'F',
          because: `it is owed before each departure and was last signed ${doneAt} for ${record.forFlight === undefined ? 'no named flight' : 'another flight'}`,
        };
  }
  if (repeat === 'each-flight-day') {
    const [done, departs] = [
      dayIn(settings.base, 'work.doneAt', doneAt),
      dayIn(settings.base, 'flight.offBlockAt', frame.departsAt),
    ];
    return done === departs
      ? { valid: 'T', because: `it was done ${doneAt}, on this flight-day`, ...until }
      : {
          valid: 'F',
          because: `it is owed once each flight-day and was last done on ${done}; this flight leaves on ${departs}`,
        };
  }
  const counted = countedSince(frame, record, 'every' in repeat ? repeat.every : repeat.afterFirstFlightThenEvery);
  return counted.valid === 'T' ? { ...until, ...counted } : counted;
}

/** So many hours, flights or days after it was done: the same counting as an interval that began then. */
function countedSince(frame: Frame, record: WorkState, every: string): Standing {
  const { settings, tzdb } = frame.situation;
  const doneAt = record.doneAt ?? '';
  const clock = clockOf({
    category: 'A',
    interval: every,
    recordedAt: doneAt,
    base: settings.base,
    tzdb,
  });
  const hoursCountedAt = settings.expiryInFlight === 'arrival-inside' ? 'arrival' : 'departure';
  const { answer, because } = departure(clock, frame.leg, record.usedSince ?? {}, {
    ...frame.counting,
    hoursCountedAt,
  });
  const valid = answer === 'holds' ? 'T' : answer === 'fails' ? 'F' : 'U';
  const sentence = `it is owed every ${every} and was last done ${doneAt}: ${because}`;
  const end = clock.endsAt;
  return {
    valid,
    because: sentence,
    ...(end === null ? {} : { until: { at: end, because: `${record.work} is owed again` } }),
  };
}

function possibility(
  frame: Frame,
  records: readonly WorkState[],
  procedure: Procedure | null,
): { truth: Truth; because?: string; askFact?: string } {
  const refusing = records.find(({ possible }) => possible === false);
  if (refusing !== undefined)
    return { truth: 'F', because: refusing.because ?? 'it cannot be done before this flight' };
  const asked = records.find(({ possible }) => possible === null);
  if (asked !== undefined)
    return { truth: 'U', because: asked.because ?? 'whether it can be done before this flight is not known' };
  if (procedure?.needsPersonAtStation !== true || records.some(({ possible }) => possible === true))
    return { truth: 'T' };
  const { value } = frame.facts.view(PERSON);
  if (value === true) return { truth: 'T' };
  if (value === false) return { truth: 'F', because: 'nobody authorised and equipped is at the departure station' };
  const why = value instanceof Unknown ? ` (${value.reason})` : '';
  return {
    truth: 'U',
    because: `whether somebody authorised and equipped is at the departure station is not known${why}`,
    askFact: PERSON,
  };
}
