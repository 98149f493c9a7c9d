import { becauseOf } from '../answer/sentence.js';
import type { Frame } from '../frame/frame.js';
import type { TreeOf } from '../frame/trees.js';
import type { Until } from '../frame/until.js';
import { byCode } from '../units/unit.js';
import type { ExplainedNode } from '../verdict.js';
import type { Proviso } from '#mel';
import { judged, partOf, type Judged, type Rule } from './item.js';

/** Every proviso of the row holds. They are read out as they are numbered, in whatever order the file has them. */
export const provisos: Rule = (item, frame, _state, treeOf) =>
  [...(item.row.provisos ?? [])]
    .sort(byNumber)
    .map((proviso) => judgedProviso(proviso, partOf(item, proviso.id), frame, treeOf));

/** The shorter first: a, b, ..., z, aa and 1, 2, ..., 10. */
function byNumber(a: Proviso, b: Proviso): number {
  return a.id.length - b.id.length || byCode(a.id, b.id);
}

export function judgedProviso(proviso: Proviso, id: string, frame: Frame, treeOf: TreeOf): Judged {
  const tree = treeOf(proviso);
  return judged('proviso', id, proviso.text, tree, becauseOf(frame.mel, tree), { tree, untils: untilsOf(tree) });
}

/** An answer rests on every known fact below it, also on those that did not decide. */
function untilsOf(node: ExplainedNode): Until[] {
  if (node.node !== 'leaf') return (node.children ?? []).flatMap(untilsOf);
  if (node.known !== true || node.validUntil === undefined) return [];
  return [{ at: node.validUntil, because: `${node.fact ?? node.text} is valid until then` }];
}
