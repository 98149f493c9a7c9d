import type { EntityManager } from 'typeorm';
import { isHeadSignedBy } from '#record';
import { isoText } from '../rows/column.js';
import { publicKeyOfHex } from './head-key.js';
import type { Misfit } from './waiting.js';

const pageSize = 1_000;

/** The first signed head whose signature is not the one its own key gives; null when all fit. */
export async function alteredSignedHead(manager: EntityManager, log: string): Promise<Misfit | null> {
  for (let after = 0; ;) {
    const rows = await manager.query<Row[]>(
      `select size, root, signed_at, signature, public_key from signed_head
       where operator_id = $1 and size > $2 order by size limit ${pageSize}`,
      [log, after],
    );
    const altered = rows.find((row) => !fits(row, log));
    if (altered) {
      const number = Number(altered.size);
      return { number, kind: 'signed-head', sentence: `The signed head of ${number} entries was altered.` };
    }
    if (rows.length < pageSize) return null;
    after = Number(rows.at(-1)?.size);
  }
}

interface Row {
  size: string;
  root: string;
  signed_at: Date;
  signature: string;
  public_key: string;
}

function fits({ size, root, signed_at, signature, public_key }: Row, log: string): boolean {
  const head = { log, size: Number(size), root, signedAt: isoText(signed_at) as string, signature };
  try {
    return isHeadSignedBy(head, publicKeyOfHex(public_key));
  } catch {
    // What stands there is no key.
    return false;
  }
}
