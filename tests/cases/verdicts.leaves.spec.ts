/** Whoever asks why gets every leaf: those of the rows chosen and of the rows refused, though others had decided already. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { judge, whyRefused, type ExplainedNode, type Situation, type Verdict } from '#dispatch';
import { drawCases } from './verdicts.draw.js';

const seen = { leaves: 0, unknown: 0, decided: 0, refused: 0 };

function lookInto(node: ExplainedNode): void {
  if (node.node !== 'leaf') {
    const children = node.children ?? [];
    expect(children).not.toEqual([]);
    if (node.node === 'all' && children[0]?.after === 'F' && children.length > 1) seen.decided += 1;
    return children.forEach(lookInto);
  }
  seen.leaves += 1;
  expect(['T', 'U', 'F']).toContain(node.now);
  expect(['T', 'U', 'F']).toContain(node.after);
  expect([node.fact, node.expected, node.actual]).not.toContain(undefined);
  if (node.known === true && typeof node.actual !== 'object') return;
  seen.unknown += 1;
  if (node.now === 'U') expect(node.question).not.toBe('');
  if (node.actual === null) expect(node.because).not.toBe('');
}

function lookAt({ items }: Verdict): void {
  for (const { conditions } of items) {
    for (const { kind, tree } of conditions) {
      if (kind === 'proviso') expect(tree).toBeDefined();
      if (tree !== undefined) lookInto(tree);
    }
  }
}

it('every leaf of a chosen or a refused row has a value', async () => {
  for (const seed of fc.sample(fc.noBias(fc.nat()), { numRuns: 40, seed: 12 })) {
    for (const { mel, situation } of drawCases(seed, 3)) {
      lookAt(await judge(mel, situation));
      for (const { defect, row } of whyRefused(mel, situation, { budget: 200 })) {
        const under: Situation['defects'] = situation.defects.map((one) =>
          one.id === defect ? { ...one, row, signed: false } : one,
        );
        lookAt(await judge(mel, { ...situation, defects: under }));
        seen.refused += 1;
      }
    }
  }
  expect(Math.min(...Object.values(seen)), JSON.stringify(seen)).toBeGreaterThan(20);
});
