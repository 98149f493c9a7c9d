/** Says in one sentence why a condition tree has its value, from the leaves that decide. */
import { readFactKey, type Mel } from '#mel';
import { nameOf } from '../frame/compiled-mel.js';
import type { ExplainedNode, NowAfter, Truth } from '../verdict.js';

const MOST_LEAVES = 3;

/** The side that keeps a condition from holding: what work cannot change first. */
export function decidingSide({ after }: NowAfter): keyof NowAfter {
  return after === 'T' ? 'now' : 'after';
}

/** The leaves without which a node would not have its value on that side, in reading order. */
export function decidingLeaves(node: ExplainedNode, side: keyof NowAfter): ExplainedNode[] {
  if (node.node === 'leaf') return [node];
  const children = node.children ?? [];
  if (node.node === 'not') return children.flatMap((child) => decidingLeaves(child, side));
  const same = children.filter((child) => child[side] === node[side]);
  return same.flatMap((child) => decidingLeaves(child, side));
}

export function becauseOf(mel: Mel, tree: ExplainedNode): string {
  const side = decidingSide(tree);
  const leaves = decidingLeaves(tree, side);
  const said = [...new Set(leaves.map((leaf) => sayLeaf(mel, leaf, side)))];
  const rest = said.length - MOST_LEAVES;
  return said.slice(0, MOST_LEAVES).join('; ') + (rest > 0 ? `; and ${rest} more` : '');
}

function sayLeaf(mel: Mel, leaf: ExplainedNode, side: keyof NowAfter): string {
  if (leaf[side] !== 'U') return sayValue(mel, leaf);
  if (leaf.fact?.startsWith('entry.')) return `${sayValue(mel, leaf)}, which is not known for certain`;
  const who = (leaf.mayAnswer ?? []).join(' or ');
  return `not known: ${labelOf(mel, leaf)} (${leaf.because ?? 'it depends on work'}${who === '' ? '' : `; ask ${who}`})`;
}

function sayValue(mel: Mel, leaf: ExplainedNode): string {
  const { fact = '', actual } = leaf;
  const definition = readFactKey(fact)?.fact;
  if (fact.startsWith('entry.')) return `${listed(actual)} of ${labelOf(mel, leaf)} ${definition?.label ?? ''}`;
  if (fact.startsWith('work.'))
    return `${labelOf(mel, leaf)}: ${actual === true ? '' : 'not '}done and signed for this flight`;
  const unit = definition?.unit === undefined ? '' : ` ${definition.unit}`;
  const source = leaf.source === undefined ? '' : ` (${leaf.source})`;
  return `${labelOf(mel, leaf)}: ${listed(actual)}${unit}${source}`;
}

/** e.g. "width of the narrowest runway", "Autopilot, needed by the approach minima". */
function labelOf(mel: Mel, { fact = '' }: ExplainedNode): string {
  const read = readFactKey(fact);
  const [subject = '', units] = (read?.subject ?? '').split('/');
  if (read?.fact.family === 'entries')
    return nameOf(mel, subject) + (units === undefined ? '' : ` (${units.replaceAll('+', ', ')})`);
  if (read?.fact.family === 'work' || read?.fact.family === 'judgement') return nameOf(mel, read.subject ?? '');
  const label = read?.fact.label ?? fact;
  return subject === '' ? label : `${nameOf(mel, subject)}, ${label}`;
}

function listed(actual: unknown): string {
  if (Array.isArray(actual)) return actual.map(word).join(' or ');
  return word(actual);
}

function word(value: unknown): string {
  return value === true ? 'yes' : value === false ? 'no' : String(value);
}

/** The words for one truth value. */
export const TRUTH_WORDS: Record<Truth, string> = { T: 'holds', F: 'does not hold', U: 'is not known' };
