/** What an acceptance of the combination is given on, as it is stored with it and read back. */
import type { ExplainedNode, GivenOn, Verdict } from '#dispatch';
import type { FlightRow, JudgementRow } from '#store';

/** Looked at with every combination, whatever the rows ask for. */
export const ALWAYS_LOOKED_AT = ['flight.etopsMinutes', 'flight.crew'] as const;

/** Null for a judgement of another kind, and for one that was stored without. */
export function givenOn({ judgement, covers }: Pick<JudgementRow, 'judgement' | 'covers'>): GivenOn | null {
  const { items, flights = [] } = covers as Partial<GivenOn>;
  return judgement === 'combination' && items !== undefined ? { items, flights } : null;
}

/** The route of a flight, and the facts known of it that its answer rests on. */
export function lookedAt(
  { fromStation: from, toStation: to }: FlightRow,
  verdict: Verdict,
  always: Readonly<Record<string, unknown>>,
): GivenOn['flights'][number] {
  const trees = verdict.items.flatMap(({ conditions }) => conditions.flatMap(({ tree }) => tree ?? []));
  const used = trees.flatMap(leaves).map(({ fact = '', actual }) => [fact, actual] as const);
  const known = [...used, ...Object.entries(always)].filter(
    (one): one is [string, string | number | boolean] => one[0].startsWith('flight.') && isValue(one[1]),
  );
  return { from, to, facts: Object.fromEntries(known) };
}

function leaves(node: ExplainedNode): ExplainedNode[] {
  if (node.node !== 'leaf') return (node.children ?? []).flatMap(leaves);
  return node.known === true ? [node] : [];
}

function isValue(value: unknown): boolean {
  return ['string', 'number', 'boolean'].includes(typeof value);
}
