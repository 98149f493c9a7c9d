export * from './content.js';
