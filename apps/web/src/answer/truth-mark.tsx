import { type NowAfter, standingOf, truthWords } from '../words/words.js';

/** Whether a condition holds: words, in a frame whose shape says the same. */
export function TruthMark({ of }: { of: NowAfter }) {
  return <span class={`truth ${standingOf(of)}`}>{truthWords(of)}</span>;
}
