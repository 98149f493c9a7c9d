import { CalendarFeedTable, type CalendarFeedRow } from '../rows/calendar-feed.row.js';
import type { Fresh } from '../rows/fresh.js';
import type { Transaction } from '../transaction.js';

export class CalendarFeeds {
  constructor(private readonly tx: Transaction) {}

  add(feed: Fresh<CalendarFeedRow, 'everywhere'>): Promise<string> {
    return this.tx.insert(CalendarFeedTable, feed);
  }

  get(id: string): Promise<CalendarFeedRow | null> {
    return this.tx.manager.findOneBy(CalendarFeedTable, { operatorId: this.tx.operatorId, id });
  }

  /** Revoked ones too. */
  ofToken(tokenHash: string): Promise<CalendarFeedRow | null> {
    return this.tx.manager.findOneBy(CalendarFeedTable, { operatorId: this.tx.operatorId, tokenHash });
  }

  /** Of one person, or of everybody; the newest first. */
  list(personId: string | null): Promise<CalendarFeedRow[]> {
    const { operatorId, manager } = this.tx;
    return manager.find(CalendarFeedTable, {
      where: { operatorId, ...(personId === null ? {} : { personId }) },
      order: { createdAt: 'DESC', id: 'DESC' },
    });
  }

  /** @throws StaleVersion */
  change(id: string, seen: number, changes: Partial<CalendarFeedRow>): Promise<void> {
    return this.tx.change(CalendarFeedTable, id, seen, changes);
  }
}
