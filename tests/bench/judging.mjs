/** Answers a second, beside the bare rules engine and beside closures made by hand, on the same trees and facts. */
import { Engine } from 'json-rules-engine';
import { compileAll, compileProviso, judge } from '#dispatch';
import { loadMel } from '#mel';
import { content, flightFacts, situation } from './bench-mel.mjs';
import { inTurns, rate, ratio } from './measure.mjs';

export async function judging() {
  const loaded = loadMel(content, 'bench');
  if (!loaded.mel) throw new Error(JSON.stringify(loaded.errors[0]));
  compileAll(loaded.mel);
  const lines = [];
  for (const defects of [1, 8]) {
    const same = situation(defects);
    const answer = await judge(loaded.mel, same);
    if (answer.verdict !== 'may-fly')
      throw new Error(`expected may-fly, got ${answer.verdict}: ${answer.reasons[0]}`);
    const trees = content.entries.slice(0, defects).flatMap((entry) => entry.subEntries[0].rows[0].provisos);
    const engines = trees.map(({ when }) => bareEngine(when));
    const facts = () => ({ ...anotherFlight(), 'entry.up': ({ entry }) => unitsUp(entry, defects) });
    const closures = trees.map(({ when }) => closureOf(when));
    const compiled = trees.map((tree) => compileProviso(tree));
    const rates = await inTurns({
      provisos: async () => {
        const lookup = lookupOf(defects, anotherFlight());
        for (const one of compiled)
          if ((await one.judge(lookup)).now !== 'T') throw new Error('a proviso does not hold');
      },
      judge: () => judge(loaded.mel, withFacts(same, anotherFlight())),
      again: () => judge(loaded.mel, same),
      bare: async () => {
        const now = facts();
        for (const engine of engines)
          if (!(await engine.run(now)).results.length) throw new Error('bare engine says no');
      },
      byHand: () => {
        const now = facts();
        for (const closure of closures) if (!closure(now)) throw new Error('closure says no');
      },
    });
    const { judge: answers, again, provisos, bare, byHand } = rates;
    lines.push(
      `${defects} open defect(s), ${trees.length} trees each time:`,
      `  bare rules engine, trees only        ${rate(bare)}/s`,
      `  provisos with fold and explanation   ${rate(provisos)}/s   ${ratio(provisos, bare)} of the bare engine`,
      `  whole answers                        ${rate(answers)}/s   ${ratio(answers, bare)} of the bare engine, ${ratio(answers, byHand)} of closures`,
      `  whole answers, same facts again      ${rate(again)}/s   ${ratio(again, bare)} of the bare engine`,
      `  closures by hand, trees only         ${rate(byHand)}/s`,
    );
  }
  return lines;
}

let asked = 0;

/** Facts never asked about before: an answer kept for its facts must not count as a computed one. */
function anotherFlight() {
  asked += 1;
  return { ...flightFacts, 'flight.level': 100 + asked / 1_000_000 };
}

function withFacts(whole, facts) {
  return { ...whole, flight: { ...whole.flight, facts } };
}

/** The same facts as the bare engine is given, by the keys that the compiled trees ask for. */
function lookupOf(defects, flight) {
  return (key) => {
    const entry = /^entry\.up\[(.*)\]$/.exec(key)?.[1];
    return { value: entry === undefined ? flight[key] : unitsUp(entry, defects) };
  };
}

function bareEngine(when) {
  return new Engine([{ conditions: when, event: { type: 'holds' } }]);
}

function unitsUp(entry, defects) {
  return content.entries.findIndex(({ number }) => number === entry) < defects ? 1 : 2;
}

const COMPARE = {
  equal: (a, b) => a === b,
  lessThanInclusive: (a, b) => a <= b,
  greaterThan: (a, b) => a > b,
  greaterThanInclusive: (a, b) => a >= b,
};

function closureOf(when) {
  if (when.all) {
    const parts = when.all.map(closureOf);
    return (facts) => parts.every((part) => part(facts));
  }
  if (when.any) {
    const parts = when.any.map(closureOf);
    return (facts) => parts.some((part) => part(facts));
  }
  if (when.not) {
    const part = closureOf(when.not);
    return (facts) => !part(facts);
  }
  const compare = COMPARE[when.operator];
  const { fact, value, params } = when;
  if (params) return (facts) => compare(facts[fact](params), value);
  return (facts) => compare(facts[fact], value);
}
