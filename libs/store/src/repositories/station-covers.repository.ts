import type { Fresh } from '../rows/fresh.js';
import { StationCoverTable, type StationCoverRow } from '../rows/station-cover.row.js';
import type { Transaction } from '../transaction.js';

/** Who is at which station, and when. */
export class StationCovers {
  constructor(private readonly tx: Transaction) {}

  add(cover: Fresh<StationCoverRow, 'equipment'>): Promise<string> {
    this.tx.forget();
    return this.tx.insert(StationCoverTable, cover);
  }

  get(id: string): Promise<StationCoverRow | null> {
    return this.tx.manager.findOneBy(StationCoverTable, { operatorId: this.tx.operatorId, id });
  }

  /** Not ended, by station and by when they were entered. */
  inForce(): Promise<StationCoverRow[]> {
    return this.tx.remembered('station covers', () =>
      this.tx.read(StationCoverTable, 'ended_at is null order by station, entered_at, id'),
    );
  }

  /** @throws StaleVersion */
  end(id: string, seen: number, endedAt: string): Promise<void> {
    this.tx.forget();
    return this.tx.change(StationCoverTable, id, seen, { endedAt });
  }
}
