import { becauseOf } from '../answer/sentence.js';
import type { Frame } from '../frame/frame.js';
import { treeOf } from '../frame/trees.js';
import type { Until } from '../frame/until.js';
import type { DownState } from '../units/down-state.js';
import type { ExplainedNode } from '../verdict.js';
import type { Proviso } from '#mel';
import { judged, partOf, type Judged, type Rule } from './item.js';

/** Every proviso of the row holds. */
export const provisos: Rule = (item, frame, state) =>
  Promise.all(
    (item.row.provisos ?? []).map((proviso) => judgedProviso(proviso, partOf(item, proviso.id), frame, state)),
  );

export async function judgedProviso(proviso: Proviso, id: string, frame: Frame, state: DownState): Promise<Judged> {
  const tree = await treeOf(frame, proviso, state);
  return judged('proviso', id, proviso.text, tree, becauseOf(frame.mel, tree), { tree, untils: untilsOf(tree) });
}

/** An answer rests on every known fact below it, also on those that did not decide. */
function untilsOf(node: ExplainedNode): Until[] {
  if (node.node !== 'leaf') return (node.children ?? []).flatMap(untilsOf);
  if (node.known !== true || node.validUntil === undefined) return [];
  return [{ at: node.validUntil, because: `${node.fact ?? node.text} is valid until then` }];
}
