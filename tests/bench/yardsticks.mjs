/**
 * Judgements of provisos a second: the compiled evaluator, with its explained tree and by its value alone, beside the bare
 * rules engine, a JsonLogic engine with built rules, and Cedar with preparsed policies; the same trees and facts, in turns.
 */
import { setFlagsFromString } from 'node:v8';
import { preparsePolicySet, statefulIsAuthorized } from '@cedar-policy/cedar-wasm/nodejs';
import { LogicEngine } from 'json-logic-engine';
import { Engine } from 'json-rules-engine';
import { compileClosure } from '#dispatch';
import { content, flightFacts } from './bench-mel.mjs';
import { inTurns, rate, ratio } from './measure.mjs';
import { cedarCall, namedFacts, toCedar, toJsonLogic } from './yardstick-trees.mjs';

const provisos = content.entries.flatMap((entry) => entry.subEntries[0].rows[0].provisos);
const entries = content.entries.map(({ number }) => `entry.up[${number}]`);

// V8 of Node 20 ends the process where code that calls WebAssembly inline is thrown away and made anew.
setFlagsFromString('--no-turbo-inline-js-wasm-calls');

/** Many flights, so that no branch and no answer is learnt by heart. Each way finds them ready in the shape it reads. */
const flights = Array.from({ length: 512 }, (_, at) => ({
  ...flightFacts,
  'flight.level': at % 331,
  'flight.etopsMinutes': Math.floor(at / 331) * 60,
  ...Object.fromEntries(entries.map((key) => [key, 2])),
}));

/** Both values true, in the four bits of the compiled evaluator. */
const ALL_TRUE = 0b1111;

const holds = (value) => {
  if (!value) throw new Error('a proviso does not hold');
};

export async function yardsticks() {
  const closures = provisos.map((proviso) => compileClosure(proviso));
  const engines = provisos.map(({ when }) => new Engine([{ conditions: when, event: { type: 'holds' } }]));
  const logic = new LogicEngine();
  const built = provisos.map(({ when }) => logic.build(toJsonLogic(when)));
  for (const [at, { when }] of provisos.entries()) {
    const { type } = preparsePolicySet(`p${at}`, { staticPolicies: { p: toCedar(when) } });
    if (type !== 'success') throw new Error(`Cedar cannot read ${toCedar(when)}`);
  }
  const lookups = inTurn(flights.map(lookupIn));
  const forEngine = inTurn(
    flights.map((facts) => ({ ...facts, 'entry.up': ({ entry }) => facts[`entry.up[${entry}]`] })),
  );
  const named = inTurn(flights.map(namedFacts));
  const rates = await inTurns({
    explained: () => {
      const lookup = lookups();
      for (const closure of closures) holds(closure.judge(lookup).now === 'T');
    },
    value: () => {
      const lookup = lookups();
      for (const closure of closures) holds(closure.value(lookup) === ALL_TRUE);
    },
    engine: async () => {
      const facts = forEngine();
      for (const engine of engines) holds((await engine.run(facts)).results.length > 0);
    },
    jsonLogic: () => {
      const facts = named();
      for (const rule of built) holds(rule(facts));
    },
    cedar: () => {
      const facts = named();
      for (let at = 0; at < provisos.length; at += 1) {
        holds(statefulIsAuthorized(cedarCall(`p${at}`, facts)).response?.decision === 'allow');
      }
    },
  });
  const of = (name) => rates[name] * provisos.length;
  const line = (words, name) =>
    `  ${words.padEnd(34)} ${rate(of(name)).padStart(10)}/s   explained is ${ratio(of('explained'), of(name))} times that`;
  return [
    `${provisos.length} provisos of 3 to 5 leaves, 512 flights in turn, judgements a second:`,
    `  ${'compiled, with explanation'.padEnd(34)} ${rate(of('explained')).padStart(10)}/s`,
    line('compiled, value only', 'value'),
    line('rules engine, yes or no', 'engine'),
    line('JsonLogic engine, rules built', 'jsonLogic'),
    line('Cedar, policies preparsed, wasm', 'cedar'),
  ];
}

function lookupIn(facts) {
  const views = new Map(Object.entries(facts).map(([key, value]) => [key, { value }]));
  return (key) => views.get(key);
}

function inTurn(list) {
  let next = 0;
  return () => list[next++ % list.length];
}
