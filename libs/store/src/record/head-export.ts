import { setTimeout as sleep } from 'node:timers/promises';
import { dataSource } from '../data-source.js';
import { writeErasureLists } from '../erasures/erasure-files.js';
import { writeNewestHeads } from './head-files.js';
import type { HeadKey } from './head-key.js';
import { signNewHeads } from './sign-heads.js';

export interface HeadExport {
  /** Signs what is new at once, and writes it out: heads, and lists of erasures. */
  signNow(): Promise<void>;
  /** Signs a last time, and stops. */
  stop(): Promise<void>;
}

export interface HeadExportOptions {
  key: HeadKey;
  /** Where the signed heads are written: best a place that the house cannot change afterwards. */
  folder: string;
  everyMs: number;
  /** Gives ISO 8601. */
  now: () => string;
  /** Told of a failed round; the next one follows all the same. */
  onError?: (error: unknown) => void;
}

/**
 * Signs the heads of all records and writes them out, with the lists of erasures, again and again until stopped. Every server may run it: a head of
 * one size is signed once, by whichever comes first.
 * @param ownerUrl signs in as the owner of the tables
 */
export async function startHeadExport(
  ownerUrl: string,
  { key, folder, everyMs, now, onError = () => undefined }: HeadExportOptions,
): Promise<HeadExport> {
  const source = await dataSource(ownerUrl, { connections: 1 }).initialize();
  let last = Promise.resolve();
  const round = (): Promise<void> => {
    const next = last.then(async () => {
      await signNewHeads(source, key, now());
      await writeNewestHeads(source, folder, key);
      await writeErasureLists(source, { folder, key, now: now() });
    });
    last = next.catch(() => undefined);
    return next;
  };
  const stopping = new AbortController();
  const work = async (): Promise<void> => {
    while (!stopping.signal.aborted) {
      await round().catch(onError);
      await sleep(everyMs, undefined, { signal: stopping.signal }).catch(() => undefined);
    }
  };
  const working = work();
  return {
    signNow: round,
    async stop() {
      stopping.abort();
      await working;
      await round().catch(onError);
      await source.destroy();
    },
  };
}
