import type { Schemas } from '../api/client.js';

interface AnswerWordsProps {
  code: Schemas['Verdict']['verdict'];
  words: string;
}

/** The answer in words, in a frame of its own shape: plain, double, dashed, or with a heavy bar. */
export function AnswerWords({ code, words }: AnswerWordsProps) {
  return <strong class={`answer-words ${code}`}>{words}</strong>;
}
