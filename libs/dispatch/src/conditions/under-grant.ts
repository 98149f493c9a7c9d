/**
 * Past its deadline an item flies only under a document of an authority that covers this flight, and under nothing else.
 * The deadline stays where it is. 21.A.701; M.A.403(b).
 */
import { grantFor, type GrantAnswer } from '#deferrals';
import { factOf } from '#mel';
import type { Frame } from '../frame/frame.js';
import { UU } from '../kleene.js';
import type { OpenDefect } from '../situation.js';
import type { ExplainedNode, Truth } from '../verdict.js';

const KIND = 'flight.kind';

export interface UnderGrant {
  truth: Truth;
  because: string;
  /** The document that covers the flight. */
  onlyUnder?: string;
  until?: { at: string; because: string };
  /** What is not known about it; there when `truth` is U. */
  leaf?: ExplainedNode;
}

/** Null where no authority has said anything. */
export function underGrant({ id, grants = [] }: OpenDefect, frame: Frame): UnderGrant | null {
  const { value } = frame.facts.view(KIND);
  const used = grants.flatMap(({ document, flightsUsed }) =>
    flightsUsed === undefined ? [] : [[document.number, flightsUsed] as const],
  );
  const flight = { ...frame.leg, ...(typeof value === 'string' ? { kind: value } : {}) };
  const found = grantFor({ grants, defect: id }, flight, Object.fromEntries(used));
  if (found === null) return null;
  const { answer, document, terms } = found;
  if (answer === 'covers') {
    return {
      truth: 'T',
      because: `only under ${document} (${terms.limit}), good from ${terms.from} until ${terms.until}`,
      onlyUnder: document,
      until: { at: terms.until, because: `${document} ends` },
    };
  }
  const gaps = found.gaps.join('; ');
  if (answer === 'unknown') {
    const because = `Whether ${document} covers the flight is not known: ${gaps}.`;
    return { truth: 'U', because, leaf: openLeaf(found, because) };
  }
  return { truth: 'F', because: `It could fly only under ${document}, which does not cover the flight: ${gaps}.` };
}

/** The document covers the flight if what is not known turns out well. Where that is its kind, somebody can be asked. */
function openLeaf({ terms, document, asksKind }: GrantAnswer, because: string): ExplainedNode {
  const leaf = { node: 'leaf', text: `${document} covers the flight`, ...UU, known: false, because } as const;
  const fact = factOf(KIND);
  if (!asksKind || fact === undefined) return leaf;
  const { mayAnswer, question } = fact;
  const asked = { mayAnswer: [...mayAnswer], question };
  return { ...leaf, fact: KIND, operator: 'in', expected: terms.kindsOfFlight ?? [], actual: null, ...asked };
}
