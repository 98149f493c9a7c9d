/** Chance from a seed: the same seed, the same throws. For cases by the ten thousand; a property of few uses fast-check. */
export class Dice {
  #state: number;

  constructor(seed: number) {
    this.#state = seed >>> 0;
  }

  /** From 0 up to, but not including, 1 (a linear congruential generator with its bits mixed). */
  throw(): number {
    this.#state = (Math.imul(this.#state, 1_664_525) + 1_013_904_223) >>> 0;
    let mixed = Math.imul(this.#state ^ (this.#state >>> 16), 0x21f0_aaad);
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x735a_2d97);
    return ((mixed ^ (mixed >>> 15)) >>> 0) / 2 ** 32;
  }

  /** A whole number from 0 to most. */
  upTo(most: number): number {
    return Math.floor(this.throw() * (most + 1));
  }

  chance(probability: number): boolean {
    return this.throw() < probability;
  }

  of<T>(list: readonly T[]): T {
    return list[this.upTo(list.length - 1)]!;
  }

  /** At least one of them. */
  someOf<T>(list: readonly T[]): T[] {
    const some = list.filter(() => this.chance(0.5));
    return some.length === 0 ? [this.of(list)] : some;
  }

  list<T>(least: number, most: number, make: () => T): T[] {
    return Array.from({ length: least + this.upTo(most - least) }, make);
  }
}
