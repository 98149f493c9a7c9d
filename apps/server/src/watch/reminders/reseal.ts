/**
 * Seals every secret of an endpoint under the first key. One address at a time, each in a transaction of its own: however
 * far it came, every secret is whole, under its old key or under the first one, and doing it again does the rest.
 */
import type { ReminderAddressRow, Store, Tx } from '#store';
import { isSealed, opened, sealed, type WhoseSecret } from './sealed-secret.js';

export interface Resealed {
  /** How many secrets there are. */
  secrets: number;
  /** Sealed anew, by the number of the key that opened them: 2 is the second one named. */
  fromKey: Record<number, number>;
  /** Lay readable, and are sealed now. */
  fromReadable: number;
  /** Were under the first key already. */
  already: number;
  /** No key that was named opens these: operator and label of the address. */
  unopened: string[];
}

const PLACES = ['secret', 'formerSecret'] as const;

/** @param keys the first seals, all of them open */
export async function resealAll(store: Store, keys: readonly Buffer[], now: string): Promise<Resealed> {
  const done: Resealed = { secrets: 0, fromKey: {}, fromReadable: 0, already: 0, unopened: [] };
  for (const { id, code } of await store.operatorsServed()) {
    const addresses = await store.withOperator(id, null, (tx) => tx.reminderAddresses.list(null));
    for (const { id: address, kind } of addresses) {
      if (kind !== 'webhook') continue;
      const one = await store.withOperator(id, null, (tx) => resealOne(tx, address, code, keys, now));
      add(done, one);
    }
  }
  return done;
}

async function resealOne(tx: Tx, id: string, code: string, keys: readonly Buffer[], now: string): Promise<Resealed> {
  const done: Resealed = { secrets: 0, fromKey: {}, fromReadable: 0, already: 0, unopened: [] };
  const row = await tx.reminderAddresses.toChange(id);
  if (!row) return done;
  const changes: Partial<ReminderAddressRow> = {};
  for (const place of PLACES) {
    const stored = row[place];
    if (stored === null) continue;
    done.secrets += 1;
    const from = keyOf(stored, row, keys);
    if (from === 1) done.already += 1;
    else if (from === null) done.unopened.push(`${code} ${row.label || row.address}`);
    else {
      changes[place] = sealed(opened(stored, row, keys) ?? '', row, keys);
      if (from === 0) done.fromReadable += 1;
      else done.fromKey[from] = (done.fromKey[from] ?? 0) + 1;
    }
  }
  if (Object.keys(changes).length === 0) return done;
  await tx.reminderAddresses.change(id, row.version, changes);
  await tx.record.append({
    who: null,
    authorisation: null,
    organisation: null,
    what: 'reminder-address.resealed',
    aircraft: null,
    times: { enteredAt: now },
    payload: { address: id },
  });
  return done;
}

/** Number of the key that opens it; 0 where it lies readable, null where none does. */
function keyOf(stored: string, whose: WhoseSecret, keys: readonly Buffer[]): number | null {
  if (!isSealed(stored)) return 0;
  const index = keys.findIndex((key) => opened(stored, whose, [key]) !== null);
  return index < 0 ? null : index + 1;
}

function add(to: Resealed, one: Resealed): void {
  to.secrets += one.secrets;
  to.fromReadable += one.fromReadable;
  to.already += one.already;
  to.unopened.push(...one.unopened);
  for (const [key, many] of Object.entries(one.fromKey))
    to.fromKey[Number(key)] = (to.fromKey[Number(key)] ?? 0) + many;
}
