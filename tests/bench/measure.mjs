/** Rates of several ways to do the same, measured in turns in one run, so that a busy moment hits all of them alike. */
const ROUNDS = 7;
const MILLISECONDS = 400;

/** @returns the median rate per second of each way */
export async function inTurns(ways) {
  const rates = Object.fromEntries(Object.keys(ways).map((name) => [name, []]));
  for (const work of Object.values(ways)) await during(100, work);
  for (let round = 0; round < ROUNDS; round += 1) {
    for (const [name, work] of Object.entries(ways)) rates[name].push(await during(MILLISECONDS, work));
  }
  return Object.fromEntries(Object.entries(rates).map(([name, list]) => [name, median(list)]));
}

async function during(milliseconds, work) {
  const start = performance.now();
  let times = 0;
  while (performance.now() - start < milliseconds) {
    await work();
    times += 1;
  }
  return (times * 1000) / (performance.now() - start);
}

export function median(list) {
  return list.toSorted((a, b) => a - b)[Math.floor(list.length / 2)];
}

export const rate = (value) => Math.round(value).toLocaleString('en');
export const ratio = (one, other) => (one / other).toPrecision(3);
