/** Looks for newly sealed entries of one operator as long as somebody follows, once for all who do. */
import { setTimeout as sleep } from 'node:timers/promises';
import type { Change, Store } from '#store';

export type Listener = (changes: readonly Change[]) => void;

const EVERY_MS = 400;
const MOST_AT_ONCE = 500;

export class OperatorChanges {
  readonly #listeners = new Set<Listener>();
  #looking: AbortController | null = null;

  constructor(
    private readonly store: Store,
    private readonly operatorId: string,
    private readonly onError: (error: unknown) => void,
  ) {}

  /** The number of the entry sealed last. */
  newest(): Promise<number> {
    return this.store.withOperator(this.operatorId, null, async (tx) => (await tx.record.head())?.size ?? 0);
  }

  after(number: number, limit: number): Promise<Change[]> {
    return this.store.withOperator(this.operatorId, null, (tx) => tx.record.changesAfter(number, limit));
  }

  /** @returns ends the listening; with the last listener the looking ends */
  listen(listener: Listener): () => void {
    this.#listeners.add(listener);
    if (this.#looking === null) void this.#look();
    return () => {
      this.#listeners.delete(listener);
      if (this.#listeners.size > 0) return;
      this.#looking?.abort();
      this.#looking = null;
    };
  }

  async #look(): Promise<void> {
    const { signal } = (this.#looking = new AbortController());
    let last: number | null = null;
    while (!signal.aborted) {
      try {
        last ??= await this.newest();
        const changes = await this.after(last, MOST_AT_ONCE);
        last = changes.at(-1)?.number ?? last;
        if (changes.length > 0) for (const listener of this.#listeners) listener(changes);
      } catch (error) {
        this.onError(error);
      }
      await sleep(EVERY_MS, undefined, { signal, ref: false }).catch(() => undefined);
    }
  }
}
