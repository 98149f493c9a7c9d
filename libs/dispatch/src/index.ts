/** May it fly? The verdict on one aircraft and one flight, with everything it rests on. Pure. */
export * from './situation.js';
export * from './verdict.js';
export { judge } from './judge.js';
export { compileAll } from './frame/compiled-mel.js';
export { compileProviso, type CompiledProviso } from './evaluate/proviso-engine.js';
export { Possible, Unknown, type FactLookup, type FactValue, type FactView } from './evaluate/marker.js';
