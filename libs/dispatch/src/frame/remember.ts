/**
 * Keeps the answers of a pure function that is asked the same again and again: reading an instant, counting an interval.
 * The oldest answers are forgotten first, so the memory stays small whatever is asked.
 */
const MOST_KEPT = 4096;

export function remember<Args extends readonly unknown[], Answer>(
  keyOf: (...args: Args) => string,
  compute: (...args: Args) => Answer,
): (...args: Args) => Answer {
  const answers = new Map<string, Answer>();
  return (...args) => {
    const key = keyOf(...args);
    const known = answers.get(key);
    if (known !== undefined) return known;
    const answer = compute(...args);
    if (answers.size >= MOST_KEPT) {
      for (const oldest of answers.keys()) {
        answers.delete(oldest);
        break;
      }
    }
    answers.set(key, answer);
    return answer;
  };
}
