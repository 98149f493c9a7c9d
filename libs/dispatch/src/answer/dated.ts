/**
 * Each fact of an answer with where it comes from, how old it is at the instant asked for, and how long it holds. The
 * trees that an evaluator made are shared between answers, so they are copied here and never written to.
 */
import { readFactKey } from '#mel';
import { millisOf } from '../frame/moment.js';
import type { ConditionAnswer, ExplainedNode, ItemAnswer } from '../verdict.js';

export function dated(item: ItemAnswer, at: number): ItemAnswer {
  return { ...item, conditions: item.conditions.map((condition) => datedCondition(condition, at)) };
}

function datedCondition(condition: ConditionAnswer, at: number): ConditionAnswer {
  return condition.tree === undefined ? condition : { ...condition, tree: datedNode(condition.tree, at) };
}

function datedNode(node: ExplainedNode, at: number): ExplainedNode {
  if (node.node !== 'leaf') return { ...node, children: (node.children ?? []).map((child) => datedNode(child, at)) };
  if (node.known !== true) return node;
  const fact = readFactKey(node.fact ?? '')?.fact;
  return {
    ...node,
    source: node.source ?? SOURCES[fact?.family ?? 'judgement'],
    ...(node.observedAt === undefined ? {} : { ageMinutes: ageOf(node.observedAt, at) }),
    ...(node.validUntil === undefined
      ? { validFor: fact?.validity === 'until-changed' ? UNTIL_CHANGED : THIS_FLIGHT }
      : {}),
  };
}

const THIS_FLIGHT = 'this flight';
const UNTIL_CHANGED = 'until something is changed';

/** Of a fact that names no source of its own. */
const SOURCES = {
  aircraft: 'what is kept of the aircraft',
  entries: 'what is open on the aircraft',
  flight: 'given with the flight, without a source',
  work: 'what is signed',
  judgement: 'what is recorded',
} as const;

/** Whole minutes; what is observed later than the instant asked for has none. */
function ageOf(observedAt: string, at: number): number {
  return Math.max(0, Math.floor((at - millisOf('observedAt', observedAt)) / 60_000));
}
