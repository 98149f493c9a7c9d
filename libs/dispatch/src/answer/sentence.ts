/** Says in one sentence why a condition tree has its value, from the leaves that decide. */
import { readFactKey, type Mel } from '#mel';
import { nameOf } from '../frame/compiled-mel.js';
import type { ExplainedNode, NowAfter } from '../verdict.js';

const MOST_LEAVES = 3;

/** The leaves without which a node would not have its value on that side, in reading order. */
function decidingLeaves(node: ExplainedNode, side: keyof NowAfter): ExplainedNode[] {
  if (node.node === 'leaf') return [node];
  const children = node.children ?? [];
  const same = node.node === 'not' ? children : children.filter((child) => child[side] === node[side]);
  return same.flatMap((child) => decidingLeaves(child, side));
}

/** What work cannot change comes first: the `now` side decides only when work would settle the rest. */
export function becauseOf(mel: Mel, tree: ExplainedNode): string {
  const side = tree.after === 'T' ? 'now' : 'after';
  if (tree.node === 'leaf') return sayLeaf(mel, tree, side);
  const said = [...new Set(decidingLeaves(tree, side).map((leaf) => sayLeaf(mel, leaf, side)))];
  const rest = said.length - MOST_LEAVES;
  return said.slice(0, MOST_LEAVES).join('; ') + (rest > 0 ? `; and ${rest} more` : '');
}

function sayLeaf(mel: Mel, leaf: ExplainedNode, side: keyof NowAfter): string {
  const { fact = '' } = leaf;
  if (leaf[side] !== 'U' || fact.startsWith('entry.')) return sayValue(mel, leaf);
  const why = leaf.because ?? 'it depends on work';
  const who =
    leaf.mayAnswer === undefined || leaf.mayAnswer.length === 0 ? '' : `; ask ${leaf.mayAnswer.join(' or ')}`;
  return `not known: ${labelOf(mel, leaf)} (${why}${who})`;
}

function sayValue(mel: Mel, leaf: ExplainedNode): string {
  const { fact = '', actual } = leaf;
  const definition = readFactKey(fact)?.fact;
  const label = labelOf(mel, leaf);
  if (definition?.family === 'entries') {
    return `${label}: ${listed(actual)} ${definition.label}, at least ${word(leaf.expected)} needed`;
  }
  if (definition?.family === 'work')
    return `${label}: ${actual === true ? '' : 'not '}done and signed for this flight`;
  const unit = definition?.unit === undefined ? '' : ` ${definition.unit}`;
  const source = leaf.source === undefined ? '' : ` (${leaf.source})`;
  return `${label}: ${listed(actual)}${unit}${source}`;
}

const LABELS = new WeakMap<Mel, Map<string, string>>();

function labelOf(mel: Mel, { fact = '' }: ExplainedNode): string {
  let ofMel = LABELS.get(mel);
  if (ofMel === undefined) LABELS.set(mel, (ofMel = new Map()));
  let label = ofMel.get(fact);
  if (label === undefined) ofMel.set(fact, (label = makeLabel(mel, fact)));
  return label;
}

/** e.g. "width of the narrowest runway", "Autopilot, needed by the approach minima", "Engine generators (2)". */
function makeLabel(mel: Mel, fact: string): string {
  const read = readFactKey(fact);
  const subject = read?.subject ?? null;
  if (read === null || subject === null) return read?.fact.label ?? fact;
  if (read.fact.family === 'work' || read.fact.family === 'judgement') return nameOf(mel, subject);
  if (read.fact.family !== 'entries') return `${nameOf(mel, subject)}, ${read.fact.label}`;
  const [entry = '', units] = subject.split('/');
  return nameOf(mel, entry) + (units === undefined ? '' : ` (${units.replaceAll('+', ', ')})`);
}

function listed(actual: unknown): string {
  return Array.isArray(actual) ? actual.map(word).join(' or ') : word(actual);
}

function word(value: unknown): string {
  return value === true ? 'yes' : value === false ? 'no' : String(value);
}
