export * from './situation.js';
export * from './verdict.js';
