import { makeScratch, type Scratch } from '../scratch.js';

/** A few scratch copies that checks running side by side take turns at: each copy holds one broken rule at a time. */
export class Lanes {
  readonly #copies: Scratch[];
  readonly #free: Scratch[];
  readonly #waiting: ((copy: Scratch) => void)[] = [];

  constructor(count: number) {
    this.#copies = Array.from({ length: count }, makeScratch);
    this.#free = [...this.#copies];
  }

  async use<T>(act: (copy: Scratch) => Promise<T>): Promise<T> {
    const copy = this.#free.pop() ?? (await new Promise<Scratch>((resolve) => this.#waiting.push(resolve)));
    try {
      return await act(copy);
    } finally {
      const next = this.#waiting.shift();
      if (next) next(copy);
      else this.#free.push(copy);
    }
  }

  dispose(): void {
    for (const copy of this.#copies) copy.dispose();
  }
}
