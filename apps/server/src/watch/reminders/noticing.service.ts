import { Inject, Injectable } from '@nestjs/common';
import type { AircraftRow, DefectRow, JobAsked, Jobs, NoticedReminder, ReminderAddressRow, Store, Tx } from '#store';
import { livesOf } from '../../defects/defect-book.js';
import { grouped } from '../../defects/grouped.js';
import { DispatchService } from '../../dispatch/dispatch.service.js';
import { legsForAll, usedOf } from '../../dispatch/flown.js';
import { CLOCK, type Clock, STORE, WATCH } from '../../http/tokens.js';
import { MelShelf } from '../../mel/mel-shelf.js';
import { works } from '../../people/members.service.js';
import { Titles } from '../titles.js';
import { remindersOf, type Watch } from './reminders-of.js';
import type { WatchOptions } from './watch-options.js';

const PART = 250;
const PARTS_AT_ONCE = 2;

export interface LookedAt {
  deferrals: number;
  /** Reminders that are new and wait to be sent. */
  noticed: number;
}

type DeferredKey = Pick<DefectRow, 'id' | 'aircraftId'>;

/** What is read once for a whole look. */
interface Begun {
  watch: Watch;
  deferred: DeferredKey[];
  fleet: ReadonlyMap<string, AircraftRow>;
  titles: Titles;
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
    const begun = await this.in(operatorId, (tx) => this.begin(tx, jobs));
    const { watch, deferred } = begun;
    if (watch.addresses.length === 0 || watch.settings.reminderShares.length === 0)
      return { deferrals: 0, noticed: 0 };
    const parts = inParts(deferred);
    let noticed = 0;
    // While one part waits for the database, another one is counted.
    const work = async (): Promise<void> => {
      for (let part = parts.shift(); part !== undefined; part = parts.shift()) {
        const ids = part;
        const found = await this.in(operatorId, (tx) => this.some(tx, begun, ids, jobs));
        noticed += found;
      }
    };
    await Promise.all(Array.from({ length: PARTS_AT_ONCE }, work));
    return { deferrals: deferred.length, noticed };
  }

  private jobsOrNone(): WatchOptions {
    if (this.watch === null) throw new Error('This server does nothing by itself.');
    return this.watch;
  }

  private in<T>(operatorId: string, work: (tx: Tx) => Promise<T>): Promise<T> {
    return this.store.withOperator(operatorId, null, work);
  }

  /** Also puts a job anew for each reminder whose own was lost: the row counts, and no job. */
  private async begin(tx: Tx, jobs: Jobs): Promise<Begun> {
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
    const deferred = await tx.defects.deferredKeys();
    const fleet = new Map((await tx.aircraft.list()).map((one) => [one.id, one]));
    const titles = await Titles.of(tx, this.shelf, fleet.values());
    return { watch: { addresses, settings, operator: { code, name, invented }, now }, deferred, fleet, titles };
  }

  /** The address of a person who has left ends, that of one who is locked waits; one of the operator's own stays. */
  private async addressesInUse(tx: Tx, now: string): Promise<ReminderAddressRow[]> {
    const members = await tx.people.members();
    const work = new Set(members.filter((one) => works(one, now)).map(({ personId }) => personId));
    const locked = new Set(members.filter((one) => one.lockedAt !== null).map(({ personId }) => personId));
    const all = await tx.reminderAddresses.inUse();
    const left = all.filter(({ forAll, personId }) => !forAll && !work.has(personId));
    for (const { id, version } of left) {
      const ended = { endedAt: now, endedBecause: 'its owner no longer works for the operator' };
      await tx.reminderAddresses.change(id, version, ended);
    }
    const told = all.filter((one) => one.confirmedAt !== null && !left.includes(one));
    return told.filter(({ forAll, personId }) => forAll || !locked.has(personId));
  }

  private async some(tx: Tx, { watch, fleet, titles }: Begun, ids: readonly string[], jobs: Jobs): Promise<number> {
    const opened = (await livesOf(tx, await tx.defects.getAll(ids))).filter(({ life }) => life.deferral !== null);
    const onAircraft = grouped(opened, ({ row }) => row.aircraftId);
    const noticedBefore = grouped(await tx.reminders.ofDefects(ids), ({ defectId }) => defectId ?? '');
    const legs = await legsForAll(tx, onAircraft);
    const noticed: NoticedReminder[] = [];
    for (const [id, of] of onAircraft) {
      const aircraft = fleet.get(id);
      if (!aircraft) continue;
      for (const { row, life } of of) {
        const used = usedOf(life, legs.get(id) ?? [], watch.settings.deferral.counting) ?? {};
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

/** Keys by the part, an aircraft never in two, so that what it flew is read once. */
function inParts(deferred: readonly DeferredKey[]): string[][] {
  const parts: string[][] = [];
  for (const ofOne of grouped(deferred, ({ aircraftId }) => aircraftId).values()) {
    const part = parts.at(-1);
    const ids = ofOne.map(({ id }) => id);
    if (part && part.length + ids.length <= PART) part.push(...ids);
    else parts.push(ids);
  }
  return parts;
}

function jobsFor(operatorId: string, ids: readonly string[]): JobAsked<'deliver'>[] {
  return ids.map((reminderId) => ({ key: reminderId, data: { operatorId, reminderId } }));
}

function secondsBefore(at: string, seconds: number): string {
  return new Date(Date.parse(at) - seconds * 1000).toISOString();
}
