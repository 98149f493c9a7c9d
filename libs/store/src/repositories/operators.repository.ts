import { OperatorTable, type OperatorRow } from '../rows/operator.row.js';
import { StationTable, type StationRow } from '../rows/station.row.js';
import type { Fresh } from '../rows/fresh.js';
import { StaleVersion } from '../stale-version.js';
import type { Transaction } from '../transaction.js';

/** The operator itself and the stations it flies to. */
export class Operators {
  constructor(private readonly tx: Transaction) {}

  current(): Promise<OperatorRow> {
    return this.tx.remembered('operator', async () => {
      const [operator] = await this.tx.query<OperatorRow>(
        'select id, code, name, invented, base, settings, tzdb, version from operator where id = $1',
        [this.tx.operatorId],
      );
      if (!operator) throw new Error(`There is no operator ${this.tx.operatorId} here.`);
      return operator;
    });
  }

  /**
   * @param base the zone of its calendar days, where that changes too
   * @throws StaleVersion
   */
  async changeSettings(seen: number, settings: Record<string, unknown>, base?: string): Promise<void> {
    const { manager, operatorId } = this.tx;
    this.tx.forget();
    const next = { settings: settings as object, version: seen + 1, ...(base === undefined ? {} : { base }) };
    const { affected } = await manager.update(OperatorTable, { id: operatorId, version: seen }, next);
    if (affected !== 1) throw new StaleVersion('operator', operatorId, seen);
    this.tx.wrote(OperatorTable, operatorId);
  }

  stations(): Promise<StationRow[]> {
    return this.tx.manager.find(StationTable, { where: { operatorId: this.tx.operatorId }, order: { code: 'ASC' } });
  }

  async addStation(station: Fresh<StationRow>): Promise<void> {
    await this.tx.manager.insert(StationTable, { ...station, operatorId: this.tx.operatorId });
    this.tx.wrote(StationTable, station.code);
  }
}
