/** A second person's yes to a deferral, given before it is signed. */
import { Refusal, type Signature } from '#deferrals';
import type { Tx } from '#store';
import { readPeople } from './people-in-acts.js';
import { knownPeople } from './defect-book.js';
import type { Scene } from './acting.js';
import type { DeferBody } from './bodies.js';
import { type ConcurredTo, concurredTo, differing } from './concurred-to.js';
import { basisWords } from './deferral-check.js';

interface Given {
  basis: string;
  asked: ConcurredTo | null;
  signature: Signature;
}

/** Those given for the defect as it stands, the newest first, with the names of today. */
export async function concurrencesOf(tx: Tx, defectId: string, version: number): Promise<Given[]> {
  const rows = await tx.concurrences.ofDefect(defectId, version);
  const people = await knownPeople(
    tx,
    rows.map(({ signature }) => signature),
  );
  return rows.map(({ basis, asked, signature }) => ({
    basis,
    asked,
    signature: readPeople<Signature>(signature, people),
  }));
}

/**
 * What goes into the deferral: the concurrence given to just this since the item last changed; nothing without one.
 * @throws Refusal `concurrence-to-something-else` where the newest for the same basis was to other units or limits
 */
export async function concurrenceTo(
  { tx, row, life }: Scene,
  body: Pick<DeferBody, 'row' | 'document' | 'item' | 'start'>,
): Promise<{ concurrence?: Signature }> {
  const [basis, asked] = [basisWords(body, life), concurredTo(body, life)];
  const given = (await concurrencesOf(tx, row.id, row.version)).filter((one) => one.basis === basis);
  const found = given.find((one) => one.asked !== null && differing(one.asked, asked).length === 0);
  if (found) return { concurrence: found.signature };
  const [other] = given;
  if (!other) return {};
  const what = other.asked === null ? ['nothing of it was kept'] : differing(other.asked, asked);
  throw new Refusal('concurrence-to-something-else', { name: other.signature.name, basis, differing: what });
}
