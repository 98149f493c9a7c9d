import { stateWords } from '../words/words.js';

const SHAPES: Record<string, string> = {
  unanswered: 'heavy',
  'open under deferral': 'plain',
  'being rectified': 'dashed',
  'rectified, not released': 'double',
};

/** How an item stands: words, in a frame of its own shape. */
export function StateWords({ state }: { state: string }) {
  return <span class={`state ${SHAPES[state] ?? 'bare'}`}>{stateWords(state)}</span>;
}
