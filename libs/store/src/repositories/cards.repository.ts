import {
  CardConfirmationTable,
  CardLibraryTable,
  ManualRevisionTable,
  type CardConfirmationRow,
  type CardLibraryRow,
  type ManualRevisionRow,
} from '../rows/card.row.js';
import type { Fresh } from '../rows/fresh.js';
import { type LoadedSummary, SUMMARY_COLUMNS } from '../rows/loaded-revision.js';
import type { Transaction } from '../transaction.js';

/** Libraries of work cards, the revisions of manuals, and the confirmations of cards against them. */
export class Cards {
  constructor(private readonly tx: Transaction) {}

  /** Holds the libraries of a type for the rest of the transaction: of two loaded at once one comes after the other. */
  async lock(aircraftType: string): Promise<void> {
    const name = JSON.stringify(['cards', this.tx.operatorId, aircraftType]);
    await this.tx.query('select pg_advisory_xact_lock(hashtextextended($1, 0))', [name]);
  }

  /** The library in force for a type until now gives way to this one. */
  async putInForce(library: Fresh<CardLibraryRow, 'inForce'>): Promise<string> {
    const { operatorId, manager } = this.tx;
    const { aircraftType } = library;
    const before = await this.inForce(aircraftType);
    await manager.update(CardLibraryTable, { operatorId, aircraftType, inForce: true }, { inForce: false });
    if (before !== null) this.tx.wrote(CardLibraryTable, before);
    this.tx.forget();
    return this.tx.insert(CardLibraryTable, { ...library, inForce: true });
  }

  known(aircraftType: string, document: string, revision: string): Promise<boolean> {
    const { operatorId, manager } = this.tx;
    return manager.existsBy(CardLibraryTable, { operatorId, aircraftType, document, revision });
  }

  /** The key of the library in force for a type; null when there is none. Its content never changes. */
  async inForce(aircraftType: string): Promise<string | null> {
    const { operatorId, manager } = this.tx;
    const where = { operatorId, aircraftType, inForce: true };
    const found = await manager.findOne(CardLibraryTable, { select: { operatorId: true, id: true }, where });
    return found?.id ?? null;
  }

  /** Every library that was loaded, the newest first, without its content. */
  libraries(): Promise<LoadedSummary[]> {
    const { operatorId, manager } = this.tx;
    const order = { loadedAt: 'DESC' } as const;
    return manager.find(CardLibraryTable, { select: SUMMARY_COLUMNS, where: { operatorId }, order });
  }

  get(id: string): Promise<CardLibraryRow | null> {
    return this.tx.manager.findOneBy(CardLibraryTable, { operatorId: this.tx.operatorId, id });
  }

  recordRevision(revision: Fresh<ManualRevisionRow>): Promise<string> {
    return this.tx.insert(ManualRevisionTable, revision);
  }

  /** Newest first, by the day they were issued. */
  manualRevisions(): Promise<ManualRevisionRow[]> {
    const where = { operatorId: this.tx.operatorId };
    return this.tx.manager.find(ManualRevisionTable, { where, order: { issuedOn: 'DESC', recordedAt: 'DESC' } });
  }

  confirm(confirmation: Fresh<CardConfirmationRow>): Promise<string> {
    return this.tx.insert(CardConfirmationTable, confirmation);
  }

  confirmations(aircraftType: string): Promise<CardConfirmationRow[]> {
    return this.tx.manager.findBy(CardConfirmationTable, { operatorId: this.tx.operatorId, aircraftType });
  }
}
