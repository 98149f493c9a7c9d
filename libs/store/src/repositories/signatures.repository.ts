import { In } from 'typeorm';
import type { Fresh } from '../rows/fresh.js';
import { SignatureTable, type SignatureRow } from '../rows/signature.row.js';
import type { Transaction } from '../transaction.js';

export class Signatures {
  constructor(private readonly tx: Transaction) {}

  add(signature: Fresh<SignatureRow>): Promise<string> {
    return this.tx.insert(SignatureTable, signature);
  }

  get(id: string): Promise<SignatureRow | null> {
    return this.tx.manager.findOneBy(SignatureTable, { operatorId: this.tx.operatorId, id });
  }

  /** The signatures of one person, the newest first. */
  ofPerson(personId: string, limit: number): Promise<SignatureRow[]> {
    const { operatorId, manager } = this.tx;
    return manager.find(SignatureTable, {
      where: { operatorId, personId },
      order: { signedAt: 'DESC', id: 'DESC' },
      take: limit,
    });
  }

  /** The signatures given with these record entries. */
  ofEntries(entryIds: readonly string[]): Promise<SignatureRow[]> {
    const { operatorId, manager } = this.tx;
    return manager.find(SignatureTable, {
      where: { operatorId, entryId: In([...entryIds]) },
      order: { signedAt: 'ASC', id: 'ASC' },
    });
  }
}
