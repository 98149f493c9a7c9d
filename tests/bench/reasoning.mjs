/**
 * What the reasoner costs: the day of one aircraft, the worst conflicts anybody could write, and how both grow. Times are
 * the median of several runs of what was never asked before; the node counts hang on no machine.
 */
import { compileAll, glanceAhead, nextFlights, propose } from '#dispatch';
import { loadMel } from '#mel';
import { median } from './measure.mjs';
import { adversarialMel, aircraft, day, everydayMel } from './reasoning-mel.mjs';

const ENTRIES = 60;

export async function reasoning() {
  return [...(await oneAircraft()), ...(await worstCase()), ...(await growth())];
}

function load(content) {
  const loaded = loadMel(content, 'bench');
  if (!loaded.mel) throw new Error(JSON.stringify(loaded.errors[0]));
  compileAll(loaded.mel);
  return loaded.mel;
}

let asked = 0;

/** The same question about another level, so that no answer that was kept counts as a computed one. */
function anotherDay(flights) {
  asked += 1;
  return flights.map((flight) => ({
    ...flight,
    facts: { ...flight.facts, 'flight.level': flight.facts['flight.level'] + asked / 1_000_000 },
  }));
}

/** Milliseconds, the median of so many runs: on the clock, and of the processor, which a busy machine changes less. */
async function time(runs, work) {
  const [times, processor] = [[], []];
  for (let run = 0; run < runs; run += 1) {
    const [start, before] = [performance.now(), process.cpuUsage()];
    await work();
    const used = process.cpuUsage(before);
    times.push(performance.now() - start);
    processor.push((used.user + used.system) / 1000);
  }
  return { elapsed: median(times), processor: median(processor) };
}

const ms = (value) => `${value < 10 ? value.toFixed(2) : value.toFixed(0)} ms`;
const both = ({ elapsed, processor }) => `${ms(elapsed)}, ${ms(processor)} of the processor`;

async function oneAircraft() {
  const mel = load(everydayMel(ENTRIES, 3));
  const [open, flights] = [aircraft(mel, 8), day(10)];
  const any = await glanceAhead(mel, open, flights, { rows: 'any' });
  const glance = await time(15, () => glanceAhead(mel, open, anotherDay(flights)));
  const search = await time(3, () => glanceAhead(mel, open, anotherDay(flights), { rows: 'any' }));
  const whole = await time(7, () => nextFlights(mel, open, anotherDay(flights), { savingBudget: 0 }));
  const bound = any.shownBest ? 'shown best' : 'gave up, not shown best';
  return [
    'one aircraft, 8 open defects x 3 rows x 10 flights:',
    `  under its rows, compiled                     ${both(glance)}`,
    `  under the best rows for the day, compiled    ${both(search)}   (${any.kept} of 10 kept, ${bound})`,
    `  under its rows, with reasons, rules engine   ${both(whole)}`,
  ];
}

async function worstCase() {
  const lines = [];
  for (const items of [30, 50, 60, 70]) {
    const [times, processor, nodes, answers] = [[], [], [], []];
    for (const seed of [1, 2, 3, 4, 5]) {
      const mel = load(adversarialMel(20, 4, items, seed));
      const open = { ...aircraft(mel, 20), flight: day(1)[0] };
      const found = await propose(mel, open);
      const took = await time(3, () => propose(mel, { ...open, flight: anotherDay([open.flight])[0] }));
      times.push(took.elapsed);
      processor.push(took.processor);
      nodes.push(found.nodes);
      answers.push(
        found.shownBest ? found.verdict.verdict : `gave up after ${found.nodes}: ${found.verdict.verdict}`,
      );
    }
    lines.push(
      `  ${items} items fought over: median ${ms(median(times))}, longest ${ms(Math.max(...times))}, ${ms(median(processor))} and ${ms(Math.max(...processor))} of the processor, most nodes ${Math.max(...nodes)}; ${tally(answers)}`,
    );
  }
  return ['worst case, a proposal for 20 defects x 4 rows with adversarial conflicts, 5 MELs each:', ...lines];
}

function tally(answers) {
  return [...new Set(answers)].map((one) => `${answers.filter((other) => other === one).length} ${one}`).join(', ');
}

async function growth() {
  const of = async (what, sizes, work) => {
    const cells = [];
    for (const size of sizes) cells.push(`${size}: ${ms((await work(size)).processor)}`);
    return `  in ${what.padEnd(22)} ${cells.join('   ')}`;
  };
  const three = load(everydayMel(ENTRIES, 3));
  const flight = day(1)[0];
  const proposing = (mel, defects) =>
    time(9, () => propose(mel, { ...aircraft(mel, defects), flight: anotherDay([flight])[0] }));
  return [
    'growth, of the processor:',
    await of('defects (x 3 rows)', [2, 4, 8, 16, 32], (defects) => proposing(three, defects)),
    await of('rows (8 defects)', [1, 2, 4, 8], (rows) => proposing(load(everydayMel(ENTRIES, rows)), 8)),
    await of('flights (8 defects)', [1, 2, 5, 10, 20, 40], (flights) =>
      time(7, () => glanceAhead(three, aircraft(three, 8), anotherDay(day(flights)))),
    ),
  ];
}
