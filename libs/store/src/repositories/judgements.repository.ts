import type { Fresh } from '../rows/fresh.js';
import { JudgementTable, type JudgementRow } from '../rows/judgement.row.js';
import type { Transaction } from '../transaction.js';

export class Judgements {
  constructor(private readonly tx: Transaction) {}

  add(judgement: Fresh<JudgementRow, 'covers'>): Promise<string> {
    this.tx.forget();
    return this.tx.insert(JudgementTable, judgement);
  }

  /** Of one kind for one flight, on whatever aircraft; the newest last. */
  ofFlight(flightId: string, judgement: string): Promise<JudgementRow[]> {
    const { operatorId, manager } = this.tx;
    return manager.find(JudgementTable, {
      where: { operatorId, flightId, judgement },
      order: { at: 'ASC', id: 'ASC' },
    });
  }

  /** The newest last. */
  ofAircraft(aircraftId: string): Promise<JudgementRow[]> {
    return this.tx.remembered(`judgements on ${aircraftId}`, () =>
      this.tx.read(JudgementTable, 'aircraft_id = $2 order by at, id', [aircraftId]),
    );
  }
}
