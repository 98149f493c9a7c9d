/** Every leaf asks for a fact that exists, about the right kind of subject, with an operator and a value that fit it. */
import type { ConditionLeaf, MelContent, Operator } from '../content.js';
import { misfitOf } from '../fact-value.js';
import { factOf, type FactDefinition, type FactType } from '../facts.js';
import type { Finding } from '../mel-error.js';
import { leavesIn, rowPlaces, type Path } from './places.js';

/** An open list of operators per type: `lessThan` on a choice would compare spellings. */
const OPERATORS: Record<FactType, readonly Operator[]> = {
  boolean: ['equal', 'notEqual'],
  choice: ['equal', 'notEqual', 'in', 'notIn'],
  number: [
    'equal',
    'notEqual',
    'lessThan',
    'lessThanInclusive',
    'greaterThan',
    'greaterThanInclusive',
    'in',
    'notIn',
  ],
};

const subjectFindings = (fact: FactDefinition, leaf: ConditionLeaf, path: Path): Finding[] => {
  const params = leaf.params ?? {};
  const given = (['entry', 'work', 'judgement'] as const).filter((key) => params[key] !== undefined);
  const wanted = fact.subject === 'none' ? [] : [fact.subject];
  const findings: Finding[] = [];
  for (const key of wanted) {
    if (!given.includes(key)) findings.push({ path: [...path, 'params'], reason: `${fact.id} needs params.${key}` });
  }
  for (const key of given) {
    if (!wanted.includes(key)) {
      findings.push({ path: [...path, 'params', key], reason: `${fact.id} is not about one ${key}` });
    }
  }
  if (params.units !== undefined && fact.family !== 'entries') {
    findings.push({ path: [...path, 'params', 'units'], reason: `${fact.id} is not about single units` });
  }
  return findings;
};

const valueFindings = (fact: FactDefinition, leaf: ConditionLeaf, path: Path): Finding[] => {
  if (!OPERATORS[fact.type].includes(leaf.operator)) {
    return [
      { path: [...path, 'operator'], reason: `"${leaf.operator}" does not fit ${fact.id}, which is a ${fact.type}` },
    ];
  }
  const ofList = leaf.operator === 'in' || leaf.operator === 'notIn';
  if (Array.isArray(leaf.value) !== ofList) {
    return [{ path: [...path, 'value'], reason: `"${leaf.operator}" takes ${ofList ? 'a list' : 'one value'}` }];
  }
  const values: unknown[] = Array.isArray(leaf.value) ? leaf.value : [leaf.value];
  return values.flatMap((value) => {
    const misfit = misfitOf(fact, value);
    return misfit === null ? [] : [{ path: [...path, 'value'], reason: `for ${fact.id}, ${misfit}` }];
  });
};

export const leafFindings = (content: MelContent): Finding[] =>
  rowPlaces(content)
    .flatMap(leavesIn)
    .flatMap(({ leaf, path }) => {
      const fact = factOf(leaf.fact);
      if (fact === undefined) return [{ path: [...path, 'fact'], reason: `there is no fact "${leaf.fact}"` }];
      return [...subjectFindings(fact, leaf, path), ...valueFindings(fact, leaf, path)];
    });
