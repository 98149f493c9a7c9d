/** What no answer of this program covers. It is said with every answer, so that nobody takes it for granted. */
export const NOT_LOOKED_AT: readonly string[] = Object.freeze([
  'airworthiness directives other than those given here',
  'daily, pre-flight and ETOPS checks',
  'fuel quantity and fuel planning',
  'loading, weight and balance',
  'take-off and landing performance',
]);
