/** A second person's yes to a deferral, given before it is signed. */
import type { Signature } from '#deferrals';
import type { Tx } from '#store';
import { readPeople } from './people-in-acts.js';
import { knownPeople } from './defect-book.js';
import type { Scene } from './acting.js';

interface Given {
  basis: string;
  signature: Signature;
}

/** Those given for the defect as it stands, the newest first, with the names of today. */
export async function concurrencesOf(tx: Tx, defectId: string, version: number): Promise<Given[]> {
  const rows = await tx.concurrences.ofDefect(defectId, version);
  const people = await knownPeople(
    tx,
    rows.map(({ signature }) => signature),
  );
  return rows.map(({ basis, signature }) => ({ basis, signature: readPeople<Signature>(signature, people) }));
}

/** What goes into the deferral: the concurrence given for this basis since the item last changed; nothing without one. */
export async function concurrenceTo({ tx, row }: Scene, basis: string): Promise<{ concurrence?: Signature }> {
  const found = (await concurrencesOf(tx, row.id, row.version)).find((one) => one.basis === basis);
  return found ? { concurrence: found.signature } : {};
}
