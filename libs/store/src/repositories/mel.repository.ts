import { DirectiveTable, type DirectiveRow } from '../rows/directive.row.js';
import type { Fresh } from '../rows/fresh.js';
import { MelRevisionTable, type MelRevisionRow } from '../rows/mel-revision.row.js';
import type { Transaction } from '../transaction.js';

/** A revision without its text, which is long and never changes: keep what you made of it under its id. */
export type MelSummary = Omit<MelRevisionRow, 'content'>;

const summary = {
  operatorId: true,
  id: true,
  aircraftType: true,
  document: true,
  revision: true,
  effectiveOn: true,
  sha256: true,
  loadedBy: true,
  loadedAt: true,
  inForce: true,
} as const;

export class MelRevisions {
  constructor(private readonly tx: Transaction) {}

  /** Holds the revisions of a type for the rest of the transaction: of two loaded at once one comes after the other. */
  async lock(aircraftType: string): Promise<void> {
    const { operatorId } = this.tx;
    const name = JSON.stringify(['mel', operatorId, aircraftType]);
    await this.tx.query('select pg_advisory_xact_lock(hashtextextended($1, 0))', [name]);
  }

  add(revision: Fresh<MelRevisionRow, 'inForce'>): Promise<string> {
    return this.tx.insert(MelRevisionTable, revision);
  }

  /** The revision in force for a type until now gives way to this one. */
  async putInForce(id: string): Promise<void> {
    const { operatorId, manager } = this.tx;
    this.tx.forget();
    const revision = await manager.findOneOrFail(MelRevisionTable, { select: summary, where: { operatorId, id } });
    const ofType = { operatorId, aircraftType: revision.aircraftType, inForce: true };
    const before = await manager.find(MelRevisionTable, { select: summary, where: ofType });
    await manager.update(MelRevisionTable, ofType, { inForce: false });
    await manager.update(MelRevisionTable, { operatorId, id }, { inForce: true });
    this.tx.wrote(MelRevisionTable, id, ...before.map((one) => one.id));
  }

  inForce(aircraftType: string): Promise<MelSummary | null> {
    const where = { operatorId: this.tx.operatorId, aircraftType, inForce: true };
    return this.tx.remembered(`mel in force for ${aircraftType}`, () =>
      this.tx.manager.findOne(MelRevisionTable, { select: summary, where }),
    );
  }

  list(): Promise<MelSummary[]> {
    return this.tx.manager.find(MelRevisionTable, {
      select: summary,
      where: { operatorId: this.tx.operatorId },
      order: { aircraftType: 'ASC', effectiveOn: 'ASC' },
    });
  }

  get(id: string): Promise<MelRevisionRow | null> {
    return this.tx.manager.findOneBy(MelRevisionTable, { operatorId: this.tx.operatorId, id });
  }

  addDirective(directive: Fresh<DirectiveRow>): Promise<string> {
    return this.tx.insert(DirectiveTable, directive);
  }

  directives(aircraftType: string): Promise<DirectiveRow[]> {
    return this.tx.manager.findBy(DirectiveTable, { operatorId: this.tx.operatorId, aircraftType });
  }
}
