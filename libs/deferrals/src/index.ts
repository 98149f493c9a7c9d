export * from './acts.js';
export * from './basis.js';
export * from './deadline.js';
export * from './people.js';
export { reason, Refusal, type FactValue, type Reason } from './refusal.js';
export { REFUSALS, type RefusalCode, type RefusalFacts } from './refusals.js';
export type { RefusalEntry } from './refusals/entry.js';
