import type { Store } from '#store';
import { count } from './say-time.js';

/** One line where secrets of webhooks lie in the database as they are. */
export async function readableSecretWords(store: Store, keyed: boolean): Promise<string[]> {
  let readable = 0;
  for (const { id } of await store.operatorsServed()) {
    readable += await store.withOperator(id, null, (tx) => tx.reminderAddresses.readableSecrets());
  }
  if (readable === 0) return [];
  const next = keyed ? 'run' : 'name SECRET_KEYS, start again and run';
  return [`${count(readable, 'secret')} of webhooks lie readable in the database: ${next} proviso secrets renew.`];
}
