import { DefectActTable, type DefectActRow } from '../rows/defect-act.row.js';
import type { Fresh } from '../rows/fresh.js';
import type { Transaction } from '../transaction.js';
import { BESIDE } from './defects.repository.js';

/** The acts in the lives of defects: added at the end, never changed. */
export class Acts {
  constructor(private readonly tx: Transaction) {}

  /**
   * Lock the aircraft first: the next place in the life of a defect is taken by one act only, and a second one for the
   * same place is refused by the database.
   * @param act with `seq`, its place in the life, from 1
   */
  async add(act: Fresh<DefectActRow>): Promise<void> {
    await this.tx.insert(DefectActTable, act);
  }

  of(defectId: string): Promise<DefectActRow[]> {
    return this.ofAll([defectId]);
  }

  /** When the last act of each of these defects was entered. */
  async lastAt(defectIds: readonly string[]): Promise<Map<string, string>> {
    const rows = await this.tx.query<{ id: string; at: Date }>(
      `select defect_id as id, max(at) as at from defect_act
       where operator_id = $1 and defect_id = any($2) group by defect_id`,
      [this.tx.operatorId, defectIds],
    );
    return new Map(rows.map(({ id, at }) => [id, at.toISOString()]));
  }

  /** When anything on this aircraft was last released or closed; null when nothing ever was. */
  async lastReleaseAt(aircraftId: string): Promise<string | null> {
    const [row] = await this.tx.query<{ at: Date | null }>(
      `select max(act.at) as at from defect_act act join defect on defect.operator_id = act.operator_id
         and defect.id = act.defect_id
       where act.operator_id = $1 and defect.aircraft_id = $2
         and act.kind in ('released', 'no-fault-found', 'raised-in-error', 'reset-and-watch')`,
      [this.tx.operatorId, aircraftId],
    );
    return row?.at?.toISOString() ?? null;
  }

  /** What was told of equipment used at steps of work cards, the latest uses only, the newest last. */
  async equipmentUsed(): Promise<unknown[]> {
    const rows = await this.tx.query<{ used: unknown[] }>(
      `select payload -> 'used' as used from defect_act
       where operator_id = $1 and payload -> 'used' is not null order by at desc limit 200`,
      [this.tx.operatorId],
    );
    return rows.toReversed().flatMap(({ used }) => used);
  }

  ofAll(defectIds: readonly string[]): Promise<DefectActRow[]> {
    return this.tx.read(DefectActTable, 'defect_id = any($2) order by defect_id, seq', [[...defectIds]]);
  }

  /** Of this defect and of every open one on the same aircraft. Ask right behind the lock of that aircraft. */
  ofOpenBeside(defectId: string): Promise<DefectActRow[]> {
    // One list, found first: with "or" the database reads the acts of every defect there is.
    return this.tx.read(
      DefectActTable,
      `defect_id = any(array(select id from defect where operator_id = $1 and ${BESIDE}) || $2::uuid)
       order by defect_id, seq`,
      [defectId],
    );
  }
}
