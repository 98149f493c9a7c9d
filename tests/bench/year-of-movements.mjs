/**
 * Movement messages of a fleet for so many days, as they come in: late by up to an hour and so in another order than flown,
 * some twice, some corrected afterwards, some garbage. Beside them what was really flown, counted by plain sums that share
 * no code with the reader. Everything is invented; the same seed gives the same year.
 */
const MINUTE = 60_000;
const DAY = 86_400_000;
const BEGIN = Date.UTC(2026, 0, 1);

/** @returns transmissions in the order of receipt, and what is true about them */
export function yearOfMovements(asked) {
  const truth = {};
  const transmissions = [...movementsByDay({ ...asked, truth })].flat();
  return { transmissions, ...truth };
}

/**
 * The same day by day, so that a year need not be in memory: each list holds what was received on one day.
 * @param begin midnight before the first day; @param truth gets the counters, and how many were garbage and corrections, when the last day was asked for
 */
export function* movementsByDay({ aircraft, days, seed = 1, begin = BEGIN, truth }) {
  const random = randomOf(seed);
  const whole = (least, most) => least + Math.floor(random() * (most - least + 1));
  const counters = new Map();
  const writing = { random, whole, begin, garbage: 0, corrected: 0 };
  let sent = [];
  for (let plane = 0; plane < aircraft; plane += 1) {
    const own = { flights: 0, flightDays: new Set(), blockMinutes: 0, flightMinutes: 0, cycles: 0, landings: 0 };
    counters.set(markOf(plane), own);
  }
  for (let day = 0; day < days; day += 1) {
    for (let plane = 0; plane < aircraft; plane += 1) {
      sent.push(...dayOfOne({ plane, day, own: counters.get(markOf(plane)) }, writing));
    }
    // What the next day sends is received on that day or later.
    const end = day === days - 1 ? Infinity : begin + (day + 1) * DAY;
    sent.sort((one, other) => one.at - other.at);
    const after = sent.findIndex(({ at }) => at >= end);
    const received = after === -1 ? sent : sent.slice(0, after);
    sent = after === -1 ? [] : sent.slice(after);
    yield received.map(({ text, at }) => ({ text, receivedAt: new Date(at).toISOString() }));
  }
  const { garbage, corrected } = writing;
  Object.assign(truth, { counters: counted(counters), garbage, corrected });
}

/** What one aircraft sends about one day; what it flew is added to its own counters. */
function dayOfOne({ plane, day, own }, writing) {
  const { random, whole, begin } = writing;
  const mark = markOf(plane);
  const sent = [];
  const send = (at, text) => sent.push({ text, at: at + whole(0, 59) * MINUTE });
  let off = begin + day * DAY + whole(4 * 60, 7 * 60) * MINUTE;
  const legs = (plane + day) % 5 < 2 ? 3 : 2;
  for (let leg = 0; leg < legs; leg += 1) {
    const scheduled = two(new Date(off).getUTCDate());
    const flight = `QB${plane * 5 + leg + 1}/${scheduled}.${mark}`;
    const airborne = off + whole(6, 25) * MINUTE;
    const landed = airborne + whole(45, 190) * MINUTE;
    const on = landed + whole(3, 15) * MINUTE;
    const clock = random() < 0.5 ? four : six;
    const [from, to] = leg % 2 === 0 ? ['QXA', 'QXB'] : ['QXB', 'QXA'];
    const late = random() < 0.1 ? `\nDL41/00${two(whole(5, 55))}` : '';
    const out = off;
    const departure = (wheelsOff) =>
      `MVT\n${flight}.${from}\nAD${clock(out)}/${clock(wheelsOff)} EA${four(landed)} ${to}${late}\nPX${whole(20, 180)}`;
    const arrival = (wheelsOn) => `MVT\n${flight}.${to}\nAA${clock(wheelsOn)}/${clock(on)}`;
    const truth = { airborne, landed };
    for (const [what, at, write] of [
      ['airborne', airborne, departure],
      ['landed', on, arrival],
    ]) {
      const text = write(truth[what]);
      send(at, text);
      if (random() < 0.02) send(at, text);
      if (random() < 0.01) {
        truth[what] += (what === 'airborne' ? 1 : -1) * MINUTE;
        sent.push({ text: `COR ${write(truth[what])}`, at: at + whole(60, 119) * MINUTE });
        writing.corrected += 1;
      }
      if (random() < 0.005) {
        writing.garbage += 1;
        send(at, garbageOf(writing.garbage, mark, scheduled));
      }
    }
    own.flights += 1;
    own.cycles += 1;
    own.landings += 1;
    own.flightDays.add(new Date(off).toISOString().slice(0, 10));
    own.blockMinutes += (on - off) / MINUTE;
    own.flightMinutes += (truth.landed - truth.airborne) / MINUTE;
    off = on + whole(35, 75) * MINUTE;
  }
  return sent;
}

/** Of each aircraft and of all, with the days that somebody flew on counted for each aircraft. */
function counted(counters) {
  const byRegistration = Object.fromEntries(
    [...counters].map(([mark, own]) => [mark, { ...own, flightDays: own.flightDays.size, incomplete: 0 }]),
  );
  const sum = (key) => Object.values(byRegistration).reduce((total, own) => total + own[key], 0);
  const keys = ['flights', 'flightDays', 'blockMinutes', 'flightMinutes', 'cycles', 'landings', 'incomplete'];
  return { ...Object.fromEntries(keys.map((key) => [key, sum(key)])), byRegistration };
}

/** Each of another text: the same garbage twice would be told once. */
function garbageOf(number, mark, day) {
  const kinds = [
    `QU QXAOWQT\nPLS ADV ETA ${number}`,
    `MVT\nQB${number % 1000}/99.${mark}.QXA\nAD0700/0710`,
    `MVT\nQB/${day}.${mark}.QXA\nAD0700/0710 ${number}`,
    `MVT\nQB${number % 9999}/${day}.${mark}.QXA\nAD2561/9999`,
    `M V T garbled ${number} #### ${mark}`,
  ];
  return `${kinds[number % kinds.length]}${number % kinds.length === 0 || number % kinds.length === 4 ? '' : `\nSI ${number}`}`;
}

export function markOf(plane) {
  const letter = (value) => String.fromCharCode(65 + (value % 26));
  return `Q${letter(Math.floor(plane / 676))}${letter(Math.floor(plane / 26))}${letter(plane)}X`;
}

const two = (value) => String(value).padStart(2, '0');
const four = (at) => new Date(at).toISOString().slice(11, 16).replace(':', '');
const six = (at) => `${two(new Date(at).getUTCDate())}${four(at)}`;

/** A small generator of even numbers from 0 to 1 (mulberry32). */
function randomOf(seed) {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}
