/**
 * Every way to answer the questions that a computation asks, and no others: the computation runs again and again, and each
 * time the last question that has an answer left gets its next one. What is never asked is never varied.
 */
export class Trail {
  readonly #asked: { key: string; options: readonly unknown[]; at: number }[] = [];
  readonly #answers = new Map<string, unknown>();
  /** True once anything was asked. */
  hasAsked = false;

  /** The same answer to the same question until `next`. There is at least one option, and they are always the same. */
  ask<T>(key: string, options: readonly T[]): T {
    if (!this.#answers.has(key)) {
      this.hasAsked = true;
      this.#asked.push({ key, options, at: 0 });
      this.#answers.set(key, options[0]);
    }
    return this.#answers.get(key) as T;
  }

  /** False when all ways were gone. */
  next(): boolean {
    for (let last = this.#asked.at(-1); last !== undefined; last = this.#asked.at(-1)) {
      last.at += 1;
      if (last.at < last.options.length) {
        this.#answers.set(last.key, last.options[last.at]);
        return true;
      }
      this.#answers.delete(last.key);
      this.#asked.pop();
    }
    return false;
  }
}
