export * from './content.js';
export * from './facts.js';
export * from './fact-key.js';
export { misfitOf } from './fact-value.js';
