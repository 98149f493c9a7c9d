import { setTimeout as sleep } from 'node:timers/promises';
import { dataSource } from '../data-source.js';
import { batchSize, sealOnce } from './seal.js';

export interface Sealer {
  /** Stops after the batch at hand. */
  stop(): Promise<void>;
}

export interface SealerOptions {
  /** Pause between two looks at what is waiting. */
  everyMs?: number;
  /** Told of a failed look; the next one follows all the same. */
  onError?: (error: unknown) => void;
}

/**
 * Seals the records of all operators, again and again until stopped. Every server may run one: whichever gets the lock
 * seals, the others look again later, and a killed one leaves nothing half-done.
 * @param ownerUrl signs in as the owner of the tables: the server's own role can neither number an entry nor make a head
 */
export async function startSealer(
  ownerUrl: string,
  { everyMs = 100, onError = () => undefined }: SealerOptions = {},
): Promise<Sealer> {
  const source = await dataSource(ownerUrl, { connections: 1 }).initialize();
  const stopping = new AbortController();
  const work = async () => {
    while (!stopping.signal.aborted) {
      const sealed = await sealOnce(source).catch(onError);
      if (sealed !== batchSize) await sleep(everyMs, undefined, { signal: stopping.signal }).catch(() => undefined);
    }
  };
  const working = work();
  return {
    async stop() {
      stopping.abort();
      await working;
      await source.destroy();
    },
  };
}
