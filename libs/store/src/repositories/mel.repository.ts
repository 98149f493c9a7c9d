import { DirectiveTable, type DirectiveRow } from '../rows/directive.row.js';
import type { Fresh } from '../rows/fresh.js';
import { type LoadedSummary, SUMMARY_COLUMNS } from '../rows/loaded-revision.js';
import { MelRevisionTable, type MelRevisionRow } from '../rows/mel-revision.row.js';
import type { Transaction } from '../transaction.js';

export type MelSummary = LoadedSummary;

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
    const revision = await manager.findOneOrFail(MelRevisionTable, {
      select: SUMMARY_COLUMNS,
      where: { operatorId, id },
    });
    const ofType = { operatorId, aircraftType: revision.aircraftType, inForce: true };
    const before = await manager.find(MelRevisionTable, { select: SUMMARY_COLUMNS, where: ofType });
    await manager.update(MelRevisionTable, ofType, { inForce: false });
    await manager.update(MelRevisionTable, { operatorId, id }, { inForce: true });
    this.tx.wrote(MelRevisionTable, id, ...before.map((one) => one.id));
  }

  inForce(aircraftType: string): Promise<MelSummary | null> {
    return this.tx.remembered(`mel in force for ${aircraftType}`, async () => {
      const [revision] = await this.tx.query<Omit<MelSummary, 'loadedAt'> & { loadedAt: Date }>(
        `select operator_id as "operatorId", id, aircraft_type as "aircraftType", document, revision,
           effective_on::text as "effectiveOn", sha256, loaded_by as "loadedBy", loaded_at as "loadedAt",
           in_force as "inForce"
         from mel_revision where operator_id = $1 and aircraft_type = $2 and in_force`,
        [this.tx.operatorId, aircraftType],
      );
      return revision ? { ...revision, loadedAt: revision.loadedAt.toISOString() } : null;
    });
  }

  list(): Promise<MelSummary[]> {
    return this.tx.manager.find(MelRevisionTable, {
      select: SUMMARY_COLUMNS,
      where: { operatorId: this.tx.operatorId },
      order: { aircraftType: 'ASC', effectiveOn: 'ASC' },
    });
  }

  get(id: string): Promise<MelRevisionRow | null> {
    return this.tx.manager.findOneBy(MelRevisionTable, { operatorId: this.tx.operatorId, id });
  }

  addDirective(directive: Fresh<DirectiveRow>): Promise<string> {
    this.tx.forget();
    return this.tx.insert(DirectiveTable, directive);
  }

  directives(aircraftType: string): Promise<DirectiveRow[]> {
    return this.tx.remembered(`directives for ${aircraftType}`, () =>
      this.tx.read(DirectiveTable, 'aircraft_type = $2', [aircraftType]),
    );
  }
}
