/** Keys of a parsed YAML document: plain, and each only once. The parser's own comparison grows with their square. */
import { isAlias, isMap, isScalar, isSeq, type ParsedNode } from 'yaml';

const keyText = (key: unknown): string | null =>
  isScalar(key) && (typeof key.value === 'string' || typeof key.value === 'number') ? String(key.value) : null;

/** The first thing wrong with a key anywhere below a node, or null. */
export const keyProblem = (node: ParsedNode | null): string | null => {
  if (isSeq<ParsedNode>(node)) return firstProblem(node.items);
  if (!isMap<ParsedNode, ParsedNode | null>(node)) return null;
  const seen = new Set<string>();
  for (const { key } of node.items) {
    const text = isAlias(key) ? null : keyText(key);
    if (text === null) return 'a key is not a plain text';
    if (seen.has(text)) return `the key "${text.slice(0, 40)}" stands twice in one mapping`;
    seen.add(text);
  }
  return firstProblem(node.items.map(({ value }) => value));
};

const firstProblem = (nodes: readonly (ParsedNode | null)[]): string | null => {
  for (const node of nodes) {
    const problem = keyProblem(node);
    if (problem !== null) return problem;
  }
  return null;
};
