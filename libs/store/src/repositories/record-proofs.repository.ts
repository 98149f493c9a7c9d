import {
  hexOf,
  proofFormat,
  proveConsistency,
  proveInclusions,
  type Hash,
  type LeafReader,
  type ProofFile,
  type ProvenEntry,
  type SignedHead,
} from '#record';
import { isoText } from '../rows/column.js';
import type { SignedHeadRow } from '../rows/signed-head.row.js';
import type { Transaction } from '../transaction.js';

/** What is to be proved: these entries of the record, and how it grew since a head that was signed earlier. */
export interface Proving {
  entryIds: readonly string[];
  /** Size of an earlier signed head; none when absent. */
  since?: number;
}

const pageSize = 10_000;

/** Proofs about the record of one operator, for those who do not trust the house. */
export class RecordProofs {
  constructor(private readonly tx: Transaction) {}

  /** Signed heads, the newest first; with a size, the one over that many entries. */
  async signedHeads(limit = 200, size: number | null = null): Promise<SignedHeadRow[]> {
    const rows = await this.tx.query<Omit<SignedHeadRow, 'size' | 'signedAt'> & { size: string; signedAt: Date }>(
      `select operator_id as "operatorId", size, root, signed_at as "signedAt", signature, public_key as "publicKey"
       from signed_head where operator_id = $1 and ($3::bigint is null or size = $3) order by size desc limit $2`,
      [this.tx.operatorId, limit, size],
    );
    return rows.map((row) => ({ ...row, size: Number(row.size), signedAt: isoText(row.signedAt) as string }));
  }

  /** Ids of the entries about an aircraft, or of those among them that mention an id, in the order they were written. */
  async entriesOf(aircraftId: string, mentioning: string | null = null): Promise<string[]> {
    const rows = await this.tx.query<{ id: string }>(
      `select id from record_entry where operator_id = $1 and aircraft_id = $2
         and ($3::text is null or position(convert_to($3, 'UTF8') in canonical) > 0) order by seq`,
      [this.tx.operatorId, aircraftId, mentioning],
    );
    return rows.map(({ id }) => id);
  }

  /** Id of the entry with this number; null when there is none. */
  async entryNumbered(number: number): Promise<string | null> {
    const [row] = await this.tx.query<{ id: string }>(
      'select entry_id as id from record_sealed where operator_id = $1 and number = $2',
      [this.tx.operatorId, number],
    );
    return row?.id ?? null;
  }

  /**
   * The proof file over the newest signed head, or over the newest bare one where none signed holds all of these entries.
   * Entries that are not sealed yet are left out.
   * @throws RangeError when no head of the size `since` was signed, or it is not older than the newest
   */
  async file({ entryIds, since }: Proving): Promise<ProofFile> {
    const sealed = await this.sealed(entryIds);
    const head = await this.headOver(sealed.at(-1)?.number ?? 0);
    const found = sealed.filter(({ number }) => number <= head.size);
    const indexes = found.map(({ number }) => number - 1);
    const proofs = await proveInclusions(this.leaves, indexes, head.size);
    const entries = found.map(({ number, canonical, leaf }): ProvenEntry => ({
      number,
      canonical: canonical.toString('utf8'),
      leaf: hexOf(leaf),
      proof: (proofs.get(number - 1) ?? []).map(hexOf),
    }));
    const earlier = since === undefined ? null : await this.grownFrom(since, head.size);
    return { format: proofFormat, log: this.tx.operatorId, head, earlier, entries };
  }

  private async headOver(number: number): Promise<ProofFile['head']> {
    const [signed] = await this.signedHeads(1);
    if (signed && signed.size >= number) return asHead(signed);
    const [bare] = await this.tx.query<{ size: string; root: string }>(
      'select size, root from tree_head where operator_id = $1 order by size desc limit 1',
      [this.tx.operatorId],
    );
    if (!bare) throw new RangeError('The record holds no sealed entry yet.');
    return { log: this.tx.operatorId, size: Number(bare.size), root: bare.root };
  }

  private async grownFrom(since: number, size: number): Promise<ProofFile['earlier']> {
    const [head] = await this.signedHeads(1, since);
    if (!head) throw new RangeError(`No head of ${since} entries was signed.`);
    return { head: asHead(head), proof: (await proveConsistency(this.leaves, since, size)).map(hexOf) };
  }

  private async sealed(entryIds: readonly string[]) {
    const rows = await this.tx.query<{ number: string; canonical: Buffer; leaf: Buffer }>(
      `select s.number, e.canonical, e.leaf from record_sealed s
       join record_entry e on e.operator_id = s.operator_id and e.id = s.entry_id
       where s.operator_id = $1 and s.entry_id = any($2) order by s.number`,
      [this.tx.operatorId, entryIds],
    );
    return rows.map((row) => ({ ...row, number: Number(row.number) }));
  }

  private readonly leaves: LeafReader = (from, to) => this.leavesBetween(from, to);

  /** Page after page, so that a long record is read in flat memory. */
  private async *leavesBetween(from: number, to: number): AsyncGenerator<Hash> {
    for (let after = from; after < to; after += pageSize) {
      const rows = await this.tx.query<{ leaf: Buffer }>(
        `select leaf from record_sealed where operator_id = $1 and number > $2 and number <= $3 order by number`,
        [this.tx.operatorId, after, Math.min(to, after + pageSize)],
      );
      for (const { leaf } of rows) yield leaf;
    }
  }
}

function asHead({ operatorId, size, root, signedAt, signature }: SignedHeadRow): SignedHead {
  return { log: operatorId, size, root, signedAt, signature };
}
