/** What the bench measures beside each other gives the same answers, on the same trees and facts. */
import { preparsePolicySet, statefulIsAuthorized } from '@cedar-policy/cedar-wasm/nodejs';
import fc from 'fast-check';
import { LogicEngine } from 'json-logic-engine';
import { Engine, type TopLevelCondition } from 'json-rules-engine';
import { expect, it } from 'vitest';
import { compileClosure, compileProviso, Unknown } from '#dispatch';
import type { Proviso } from '#mel';
import { content } from './bench-mel.mjs';
import { cedarCall, namedFacts, toCedar, toJsonLogic } from './yardstick-trees.mjs';

const provisos: Proviso[] = content.entries.flatMap((entry) => entry.subEntries[0]!.rows[0]!.provisos);
const up = content.entries.map(({ number }) => `entry.up[${number}]`);

const facts = fc.record({
  'flight.level': fc.constantFrom(0, 329, 330, 331, 410),
  'flight.icing': fc.constantFrom('none', 'forecast', 'known'),
  'flight.etopsMinutes': fc.constantFrom(0, 120, 121),
  'flight.daylight': fc.constantFrom('day', 'night'),
  'flight.runwayState': fc.constantFrom('dry', 'wet', 'contaminated'),
  'flight.conditions': fc.constantFrom('vmc', 'imc'),
  ...Object.fromEntries(up.map((key) => [key, fc.constantFrom(0, 1, 2)])),
});

it('both evaluators, the bare rules engine, JsonLogic and Cedar give one answer to each proviso', async () => {
  const logic = new LogicEngine();
  const ways = provisos.map((proviso, at) => {
    preparsePolicySet(`agree ${at}`, { staticPolicies: { p: toCedar(proviso.when) } });
    return {
      closure: compileClosure(proviso),
      engine: compileProviso(proviso),
      bare: new Engine([{ conditions: proviso.when as TopLevelCondition, event: { type: 'holds' } }]),
      rule: logic.build(toJsonLogic(proviso.when)) as (given: object) => unknown,
    };
  });
  const seen = { yes: 0, no: 0 };
  await fc.assert(
    fc.asyncProperty(facts, async (given: Record<string, string | number | boolean>) => {
      const lookup = (key: string) => ({ value: given[key] ?? new Unknown('not given') });
      const forBare = { ...given, 'entry.up': ({ entry }: { entry: string }) => given[`entry.up[${entry}]`] };
      for (const [at, { closure, engine, bare, rule }] of ways.entries()) {
        const cedar = statefulIsAuthorized(cedarCall(`agree ${at}`, namedFacts(given)));
        if (cedar.type !== 'success') throw new Error(JSON.stringify(cedar.errors));
        const answer = closure.judge(lookup).now === 'T';
        expect([
          closure.value(lookup) === 0b1111,
          (await engine.judge(lookup)).now === 'T',
          (await bare.run(forBare)).results.length > 0,
          Boolean(rule(namedFacts(given))),
          cedar.response.decision === 'allow',
        ]).toEqual([answer, answer, answer, answer, answer]);
        seen[answer ? 'yes' : 'no'] += 1;
      }
    }),
    { numRuns: 60 },
  );
  expect(Math.min(seen.yes, seen.no), JSON.stringify(seen)).toBeGreaterThan(100);
});
