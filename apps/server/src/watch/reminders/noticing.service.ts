import { Inject, Injectable } from '@nestjs/common';
import type { DefectRow, JobAsked, Jobs, NoticedReminder, ReminderAddressRow, Store, Tx } from '#store';
import { livesOf } from '../../defects/defect-book.js';
import { DispatchService } from '../../dispatch/dispatch.service.js';
import { legsFor, usedOf } from '../../dispatch/flown.js';
import { CLOCK, type Clock, STORE, WATCH } from '../../http/tokens.js';
import { MelShelf } from '../../mel/mel-shelf.js';
import { Titles } from '../titles.js';
import { remindersOf, type Watch } from './reminders-of.js';
import type { WatchOptions } from './watch-options.js';

const AT_ONCE = 500;

export interface LookedAt {
  deferrals: number;
  /** Reminders that are new and wait to be sent. */
  noticed: number;
}

/**
 * Looks at every open deferral of an operator, counts anew what is left of it, and writes down which reminders that makes
 * due, each with the job to send it. Looking again, at the same time or on another server, adds nothing.
 */
@Injectable()
export class NoticingService {
  constructor(
    @Inject(STORE) private readonly store: Store,
    @Inject(CLOCK) private readonly now: Clock,
    @Inject(WATCH) private readonly watch: WatchOptions | null,
    private readonly dispatch: DispatchService,
    private readonly shelf: MelShelf,
  ) {}

  async look(operatorId: string): Promise<LookedAt> {
    const { jobs } = this.jobsOrNone();
    const looked: LookedAt = { deferrals: 0, noticed: 0 };
    const [watch, open] = await this.in(operatorId, (tx) => this.begin(tx, jobs));
    if (watch.addresses.length === 0 || watch.settings.reminderShares.length === 0) return looked;
    for (let from = 0; from < open.length; from += AT_ONCE) {
      const rows = open.slice(from, from + AT_ONCE);
      looked.noticed += await this.in(operatorId, (tx) => this.some(tx, watch, rows, jobs));
    }
    return { ...looked, deferrals: open.length };
  }

  private jobsOrNone(): WatchOptions {
    if (this.watch === null) throw new Error('This server does nothing by itself.');
    return this.watch;
  }

  private in<T>(operatorId: string, work: (tx: Tx) => Promise<T>): Promise<T> {
    return this.store.withOperator(operatorId, null, work);
  }

  /** Also puts a job anew for each reminder whose own was lost: the row counts, and no job. */
  private async begin(tx: Tx, jobs: Jobs): Promise<[Watch, DefectRow[]]> {
    const now = this.now();
    const lost = await tx.reminders.waitingSince(secondsBefore(now, 2 * jobs.leaseSeconds));
    await jobs.put(
      tx,
      'deliver',
      jobsFor(
        tx.operatorId,
        lost.map(({ id }) => id),
      ),
    );
    const { code, name, invented } = await tx.operators.current();
    const settings = await this.dispatch.settings(tx);
    const addresses = await this.addressesInUse(tx, now);
    const open = await tx.defects.open();
    return [{ addresses, settings, operator: { code, name, invented }, now }, open.filter(isDeferred)];
  }

  /** The address of a person who has left ends; one of the operator's own stays. */
  private async addressesInUse(tx: Tx, now: string): Promise<ReminderAddressRow[]> {
    const members = await tx.people.members();
    const work = new Set(
      members
        .filter(({ validFrom, validUntil }) => validFrom <= now && (validUntil === null || now < validUntil))
        .map(({ personId }) => personId),
    );
    const all = await tx.reminderAddresses.inUse();
    const left = all.filter(({ forAll, personId }) => !forAll && !work.has(personId));
    for (const { id, version } of left) {
      const ended = { endedAt: now, endedBecause: 'its owner no longer works for the operator' };
      await tx.reminderAddresses.change(id, version, ended);
    }
    return all.filter((one) => !left.includes(one));
  }

  private async some(tx: Tx, watch: Watch, rows: readonly DefectRow[], jobs: Jobs): Promise<number> {
    const opened = (await livesOf(tx, rows)).filter(({ life }) => life.deferral !== null);
    const fleet = new Map((await tx.aircraft.list()).map((one) => [one.id, one]));
    const titles = await Titles.of(tx, this.shelf, fleet.values());
    const noticedBefore = grouped(await tx.reminders.ofDefects(rows.map(({ id }) => id)), ({ defectId }) => defectId);
    const noticed: NoticedReminder[] = [];
    for (const [aircraftId, of] of grouped(opened, ({ row }) => row.aircraftId)) {
      const aircraft = fleet.get(aircraftId);
      if (!aircraft) continue;
      const legs = await legsFor(tx, aircraft, of, [], watch.now);
      for (const { row, life } of of) {
        const used = usedOf(life, legs, watch.settings.deferral.counting) ?? {};
        const title = titles.item(aircraft, row);
        noticed.push(...remindersOf({ row, life, aircraft, title, used }, noticedBefore.get(row.id) ?? [], watch));
      }
    }
    const added = new Set(await tx.reminders.notice(noticed));
    const waiting = noticed.flatMap(({ id, state }) => (state === 'waiting' && added.has(id) ? [id] : []));
    await jobs.put(tx, 'deliver', jobsFor(tx.operatorId, waiting));
    return waiting.length;
  }
}

function isDeferred({ basis }: DefectRow): boolean {
  return basis !== null;
}

function jobsFor(operatorId: string, ids: readonly string[]): JobAsked<'deliver'>[] {
  return ids.map((reminderId) => ({ key: reminderId, data: { operatorId, reminderId } }));
}

function grouped<One>(list: readonly One[], keyOf: (one: One) => string): Map<string, One[]> {
  const groups = new Map<string, One[]>();
  for (const one of list) {
    const group = groups.get(keyOf(one));
    if (group) group.push(one);
    else groups.set(keyOf(one), [one]);
  }
  return groups;
}

function secondsBefore(at: string, seconds: number): string {
  return new Date(Date.parse(at) - seconds * 1000).toISOString();
}
