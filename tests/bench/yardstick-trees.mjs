/** The same condition tree for the outside yardsticks: JsonLogic, and a policy in Cedar's language. */

/** A key as a name that both can read. */
export const nameOf = (key) => key.replaceAll(/[^A-Za-z0-9]/g, '_');

const keyOf = ({ fact, params }) => (params?.entry === undefined ? fact : `${fact}[${params.entry}]`);

const LOGIC = {
  equal: '===',
  notEqual: '!==',
  lessThan: '<',
  lessThanInclusive: '<=',
  greaterThan: '>',
  greaterThanInclusive: '>=',
};
const CEDAR = { ...LOGIC, equal: '==', notEqual: '!=' };

export function toJsonLogic(condition) {
  if (condition.all) return { and: condition.all.map(toJsonLogic) };
  if (condition.any) return { or: condition.any.map(toJsonLogic) };
  if (condition.not) return { '!': [toJsonLogic(condition.not)] };
  const actual = { var: nameOf(keyOf(condition)) };
  if (condition.operator === 'in') return { in: [actual, condition.value] };
  return { [LOGIC[condition.operator]]: [actual, condition.value] };
}

/** Permits exactly when the tree holds. */
export function toCedar(condition) {
  return `permit(principal, action, resource) when { ${cedarOf(condition)} };`;
}

function cedarOf(condition) {
  if (condition.all) return `(${condition.all.map(cedarOf).join(' && ')})`;
  if (condition.any) return `(${condition.any.map(cedarOf).join(' || ')})`;
  if (condition.not) return `!(${cedarOf(condition.not)})`;
  const actual = `context.${nameOf(keyOf(condition))}`;
  if (condition.operator === 'in') return `${JSON.stringify(condition.value)}.contains(${actual})`;
  return `${actual} ${CEDAR[condition.operator]} ${JSON.stringify(condition.value)}`;
}

/** The facts by the names of `nameOf`, in whole numbers, since Cedar knows no others. */
export function namedFacts(facts) {
  return Object.fromEntries(Object.entries(facts).map(([key, value]) => [nameOf(key), value]));
}

/** What Cedar is asked: may anybody do anything, in this context? */
export function cedarCall(policySet, context) {
  return {
    principal: { type: 'Flight', id: 'f' },
    action: { type: 'Action', id: 'depart' },
    resource: { type: 'Aircraft', id: 'a' },
    context,
    preparsedPolicySetId: policySet,
    preparsedSchemaName: null,
    validateRequest: false,
    entities: [],
  };
}
