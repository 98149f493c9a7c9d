import type { Fresh } from '../rows/fresh.js';
import { InvitationTable, type InvitationRow } from '../rows/invitation.row.js';
import type { Transaction } from '../transaction.js';

export class Invitations {
  constructor(private readonly tx: Transaction) {}

  add(invitation: Fresh<InvitationRow>): Promise<string> {
    return this.tx.insert(InvitationTable, invitation);
  }

  /** Nobody else takes it up or withdraws it until this transaction ends. */
  toChange(id: string): Promise<InvitationRow | null> {
    return this.tx.read(InvitationTable, 'id = $2 for update', [id]).then(([row]) => row ?? null);
  }

  /** The one whose code has this hash, held as above. */
  withCode(codeHash: string): Promise<InvitationRow | null> {
    return this.tx.read(InvitationTable, 'code_hash = $2 for update', [codeHash]).then(([row]) => row ?? null);
  }

  /** Those that were neither taken up nor withdrawn, the newest first. */
  open(): Promise<InvitationRow[]> {
    const standing = 'taken_up_at is null and withdrawn_at is null order by invited_at desc, id';
    return this.tx.read(InvitationTable, standing);
  }

  /** @throws StaleVersion */
  change(id: string, seen: number, changes: Partial<InvitationRow>): Promise<void> {
    return this.tx.change(InvitationTable, id, seen, changes);
  }
}
