/** A leg as a person tells it, checked: what a message may lack, a person has to know. */
import { Problem } from '../http/problem.js';
import type { LegBody } from './bodies.js';
import type { LegContent } from './leg-content.js';
import { flightName } from './plan-of-leg.js';

type Ending = Exclude<LegBody['ending'], 'withdrawn'>;
type Time = 'offBlockAt' | 'airborneAt' | 'landedAt' | 'onBlockAt';

const TIMES = ['offBlockAt', 'airborneAt', 'landedAt', 'onBlockAt'] as const;
const MINUTE = 60_000;
const DAY = 86_400_000;

/** The times that each kind of leg has; `?` where it may lack one. */
const TIMES_OF: Record<Ending, Record<Exclude<Time, 'offBlockAt'>, 'needed' | 'none' | '?'>> = {
  arrived: { airborneAt: 'needed', landedAt: 'needed', onBlockAt: 'needed' },
  returned: { airborneAt: 'needed', landedAt: 'needed', onBlockAt: 'needed' },
  ramp: { airborneAt: 'none', landedAt: 'none', onBlockAt: 'needed' },
  'under-way': { airborneAt: '?', landedAt: 'none', onBlockAt: 'none' },
};

/** @throws Problem naming everything that is wrong with it */
export function legByPerson(body: LegBody, aircraftId: string, now: string): LegContent {
  const ending = body.ending as Ending;
  const flight = flightName(body.flight, {});
  const errors = [...wrongWords(body, flight), ...wrongTimes(body, ending, now)];
  if (errors.length > 0) {
    throw new Problem('invalid-input', errors.map(({ reason }) => reason).join('; '), { errors });
  }
  const at = (time: Time) => (body[time] === undefined ? null : new Date(body[time]).toISOString());
  const flown = ending === 'arrived' || ending === 'returned' ? 1 : 0;
  return {
    aircraftId,
    flight,
    scheduledOn: body.scheduledOn,
    sequence: 1,
    fromStation: body.from,
    toStation: ending === 'arrived' || ending === 'under-way' ? (body.to ?? null) : body.from,
    ending,
    offBlockAt: new Date(body.offBlockAt).toISOString(),
    airborneAt: at('airborneAt'),
    landedAt: at('landedAt'),
    onBlockAt: at('onBlockAt'),
    blockMinutes: minutes(body.offBlockAt, body.onBlockAt),
    flightMinutes: minutes(body.airborneAt, body.landedAt),
    cycles: flown,
    landings: body.landings ?? flown,
    missing: [],
    delays: body.delays.map(({ code, minutes: late }) => ({ code, minutes: late })),
    divertedFrom: null,
    divertedReason: null,
    flightId: null,
  };
}

interface Wrong {
  pointer: string;
  reason: string;
}

function wrongWords(body: LegBody, flight: string): Wrong[] {
  const { scheduledOn, from, to, ending, landings } = body;
  const wrong: Wrong[] = [];
  const refuse = (field: string, reason: string) => wrong.push({ pointer: `/${field}`, reason });
  const isFlight = /^([A-Z]{3}|[A-Z][A-Z0-9]|\d[A-Z])\d{1,4}[A-Z]?$/.test(flight);
  if (!isFlight) refuse('flight', `${JSON.stringify(body.flight)} is no flight number such as QB410`);
  if (!isDay(scheduledOn)) refuse('scheduledOn', `${JSON.stringify(scheduledOn)} is no day such as 2026-05-14`);
  for (const [field, station] of Object.entries({ from, to })) {
    if (station !== undefined && !/^[A-Z0-9]{3,4}$/.test(station))
      refuse(field, `${JSON.stringify(station)} is no station`);
  }
  if (ending === 'arrived' && to === undefined) refuse('to', 'a leg that arrived has a station where it did');
  const elsewhere = to !== undefined && to !== from;
  if ((ending === 'returned' || ending === 'ramp') && elsewhere) refuse('to', `it came back to ${from}`);
  const flown = ending === 'arrived' || ending === 'returned';
  if (landings !== undefined && (flown ? landings < 1 : landings > 0))
    refuse('landings', `${landings} landings are not those of a leg that is ${ending}`);
  return wrong;
}

function wrongTimes(body: LegBody, ending: Ending, now: string): Wrong[] {
  const wrong: Wrong[] = [];
  const refuse = (field: string, reason: string) => wrong.push({ pointer: `/${field}`, reason });
  for (const [time, rule] of Object.entries(TIMES_OF[ending]) as [Exclude<Time, 'offBlockAt'>, string][]) {
    if (rule === 'needed' && body[time] === undefined) refuse(time, `a leg that is ${ending} has ${time}`);
    if (rule === 'none' && body[time] !== undefined) refuse(time, `a leg that is ${ending} has no ${time}`);
  }
  const given = TIMES.flatMap((time) => (body[time] === undefined ? [] : [{ time, at: Date.parse(body[time]) }]));
  for (const [index, { time, at }] of given.entries()) {
    const before = given[index - 1];
    if (at % MINUTE !== 0) refuse(time, `${body[time]} is no whole minute`);
    if (at > Date.parse(now)) refuse(time, `${body[time]} has not come yet`);
    const takesTime = time === 'landedAt';
    if (before && (takesTime ? at <= before.at : at < before.at))
      refuse(time, `${body[time]} is not after ${body[before.time]}`);
  }
  const [first, last] = [given[0], given.at(-1)];
  if (first && last && last.at - first.at >= DAY) refuse(last.time, 'the leg would last 24 hours or more');
  const scheduled = Date.parse(`${body.scheduledOn}T00:00:00Z`);
  if (first && (first.at < scheduled - DAY || first.at >= scheduled + 4 * DAY))
    refuse('scheduledOn', `${body.scheduledOn} is not near ${body.offBlockAt}`);
  return wrong;
}

function isDay(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  const at = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(at.getTime()) && at.toISOString().startsWith(text);
}

function minutes(from: string | undefined, until: string | undefined): number {
  return from === undefined || until === undefined ? 0 : (Date.parse(until) - Date.parse(from)) / MINUTE;
}
