import type { Schemas } from '../api/client.js';
import { Said } from '../shell/said.js';
import { useSession } from '../session/session.js';
import { withOffset } from '../words/time.js';
import { anyOf, valueWords } from '../words/words.js';
import { TruthMark } from './truth-mark.js';

type Node = Schemas['ExplainedNode'];
type Condition = Schemas['ConditionAnswer'];

const JOINS: Partial<Record<Node['node'], string>> = {
  all: 'All of these:',
  any: 'At least one of these:',
  not: 'Not this:',
};

/** One condition with its answer; what it was made from opens below it. */
export function ConditionLine({ condition }: { condition: Condition }) {
  const { text, because, tree } = condition;
  return (
    <li class="condition">
      <TruthMark of={condition} /> <Said text={text} />
      {because !== text && (
        <span class="soft block">
          <Said text={because} />
        </span>
      )}
      {tree && worthOpening(tree) && (
        <details>
          <summary>What this was made from</summary>
          <ul class="tree">
            <TreeNode node={tree} />
          </ul>
        </details>
      )}
    </li>
  );
}

/** A single leaf about what is recorded here says no more than its condition did; a fact that somebody gave does. */
function worthOpening({ node, fact = '', observedAt, question }: Node): boolean {
  return node !== 'leaf' || fact.startsWith('flight.') || observedAt !== undefined || question !== undefined;
}

function TreeNode({ node }: { node: Node }) {
  const join = JOINS[node.node];
  return (
    <li>
      <TruthMark of={node} /> {join && node.text === 'at least one of these holds' ? join : node.text}
      {node.node === 'leaf' && <LeafFacts leaf={node} />}
      {node.children && (
        <ul class="tree">
          {node.children.map((child, index) => (
            <TreeNode key={index} node={child} />
          ))}
        </ul>
      )}
    </li>
  );
}

function LeafFacts({ leaf }: { leaf: Node }) {
  const { operator } = useSession();
  const { actual, known, source, observedAt, ageMinutes, validUntil, validFor, mayAnswer = [] } = leaf;
  return (
    <span class="soft block">
      {known === false ? 'Nobody has answered this' : `Found: ${valueWords(actual)}`}
      {source && ` · source: ${source}`}
      {observedAt && ` · seen ${withOffset(observedAt, operator.base)}`}
      {ageMinutes !== undefined && `, ${ageWords(ageMinutes)}`}
      {validUntil && ` · good until ${withOffset(validUntil, operator.base)}`}
      {!validUntil && validFor && ` · holds ${validFor.startsWith('until') ? validFor : `for ${validFor}`}`}
      {mayAnswer.length > 0 && known === false && ` · ask ${anyOf(mayAnswer)}`}
    </span>
  );
}

/** Hours from two of them on, days from two of them on. */
function ageWords(minutes: number): string {
  if (minutes < 120) return `${minutes} min old`;
  const hours = Math.floor(minutes / 60);
  return hours < 48 ? `${hours} h old` : `${Math.floor(hours / 24)} days old`;
}
