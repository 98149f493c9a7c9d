import { Inject, Injectable } from '@nestjs/common';
import { type CalendarFeedRow, type DefectRow, newId, type Store, type Tx } from '#store';
import type { Calling } from '../defects/acting.js';
import { aircraftOr404 } from '../dispatch/dispatch.service.js';
import { once } from '../http/once.js';
import { Problem } from '../http/problem.js';
import type { Session } from '../http/session.js';
import { CLOCK, type Clock, STORE } from '../http/tokens.js';
import { MelShelf } from '../mel/mel-shelf.js';
import { works } from '../people/members.service.js';
import type { MakeFeedBody } from './bodies.js';
import { type Deadline, writeCalendar } from './calendar.js';
import { Titles } from './titles.js';
import { hashOfToken, newFeedToken, operatorOfToken } from './feed-token.js';

const MOST_FEEDS = 20;
const DAYS_CANCELLED = 90;

/** Calendar feeds of people: made once, read by programs under an address of their own, revoked at will. */
@Injectable()
export class FeedsService {
  constructor(
    @Inject(STORE) private readonly store: Store,
    @Inject(CLOCK) private readonly now: Clock,
    private readonly shelf: MelShelf,
  ) {}

  /** Your own; for an administrator those of everybody. */
  async list(tx: Tx, session: Session) {
    const everybody = session.roles.includes('administrator');
    return {
      at: this.now(),
      feeds: await this.lines(tx, await tx.calendarFeeds.list(everybody ? null : session.personId)),
    };
  }

  /** The address is told with the first answer alone: neither the row nor the answer that is kept holds its token. */
  async make(
    { session, request, reply }: Calling,
    { label, aircraft: aircraftId, everywhere = false }: MakeFeedBody,
  ): Promise<object> {
    let address: string | null = null;
    const kept = await once(this.store, session, request, reply, async (tx) => {
      if (everywhere && aircraftId !== undefined) throw bothAsked();
      const aircraft = aircraftId === undefined ? null : await aircraftOr404(tx, aircraftId);
      await this.admitOneMore(tx, session);
      const token = newFeedToken(session.operatorId);
      const id = await tx.calendarFeeds.add({
        id: newId(),
        personId: session.personId,
        tokenHash: hashOfToken(token),
        aircraftId: aircraft?.id ?? null,
        everywhere,
        label,
        createdAt: this.now(),
      });
      await this.record(tx, session, 'calendar-feed.made', id, aircraft);
      address = `/api/calendar/${token}.ics`;
      return { status: 201, body: { feed: await this.lineOf(tx, id) } };
    });
    return { ...kept, address };
  }

  /** Your own; an administrator anybody's. */
  revoke({ session, request, reply }: Calling, id: string): Promise<object> {
    return once(this.store, session, request, reply, async (tx) => {
      const feed = await tx.calendarFeeds.get(id);
      if (!feed || (feed.personId !== session.personId && !session.roles.includes('administrator'))) {
        throw new Problem('not-found', `There is no calendar feed ${id} of yours.`);
      }
      if (feed.revokedAt === null) {
        await tx.calendarFeeds.change(id, feed.version, { revokedAt: this.now() });
        const aircraft = feed.aircraftId === null ? null : await tx.aircraft.get(feed.aircraftId);
        await this.record(tx, session, 'calendar-feed.revoked', id, aircraft);
      }
      return { status: 200, body: { feed: await this.lineOf(tx, id) } };
    });
  }

  /** What the address of a feed answers; null for one that is unknown, revoked, or of somebody who left or is locked. */
  async read(token: string): Promise<string | null> {
    const operatorId = operatorOfToken(token);
    if (operatorId === null) return null;
    const found = await this.store.withOperator(operatorId, null, async (tx) => {
      const feed = await tx.calendarFeeds.ofToken(hashOfToken(token));
      if (!feed || feed.revokedAt !== null || !(await this.stillWorksHere(tx, feed))) return null;
      if (!feed.everywhere) return { feed, calendar: await this.calendar(tx, feed.aircraftId) };
      return { feed, owner: (await tx.people.get(feed.personId))?.name ?? '(name erased)' };
    });
    if (found === null || 'calendar' in found) return found?.calendar ?? null;
    return this.everywhere(found.feed.personId, found.owner);
  }

  /** One operator at a time, each in a transaction that shows its rows alone. */
  private async everywhere(personId: string, owner: string): Promise<string> {
    const now = this.now();
    const memberships = (await this.store.identity.membershipsOf(personId)).filter(
      ({ validFrom, validUntil }) => validFrom <= now && (validUntil === null || now < validUntil),
    );
    const deadlines: Deadline[] = [];
    for (const { operatorId } of memberships) {
      deadlines.push(...(await this.store.withOperator(operatorId, null, (tx) => this.deadlines(tx, null))));
    }
    return writeCalendar({ name: `Deadlines of ${owner}`, deadlines });
  }

  private async admitOneMore(tx: Tx, { personId }: Session): Promise<void> {
    const own = await tx.calendarFeeds.list(personId);
    if (own.filter(({ revokedAt }) => revokedAt === null).length < MOST_FEEDS) return;
    throw new Problem('too-many-feeds', `You hold ${MOST_FEEDS} feeds already.`);
  }

  private async stillWorksHere(tx: Tx, { personId }: CalendarFeedRow): Promise<boolean> {
    const member = await tx.people.member(personId);
    return member !== null && member.lockedAt === null && works(member, this.now());
  }

  private async calendar(tx: Tx, aircraftId: string | null): Promise<string> {
    const { name } = await tx.operators.current();
    const aircraft = aircraftId === null ? null : await tx.aircraft.get(aircraftId);
    const whose = aircraft?.registration ?? name;
    return writeCalendar({ name: `Deadlines of ${whose}`, deadlines: await this.deadlines(tx, aircraftId) });
  }

  private async deadlines(tx: Tx, aircraftId: string | null): Promise<Deadline[]> {
    const since = new Date(Date.parse(this.now()) - DAYS_CANCELLED * 86_400_000).toISOString();
    const defects = (await tx.defects.withEnd(aircraftId, since)).filter(hasEnd);
    const aircraft = new Map((await tx.aircraft.list()).map((one) => [one.id, one]));
    const changed = await tx.acts.lastAt(defects.map(({ id }) => id));
    const titles = await Titles.of(tx, this.shelf, aircraft.values());
    const { base, invented } = await tx.operators.current();
    return defects.flatMap((defect): Deadline[] => {
      const of = aircraft.get(defect.aircraftId);
      if (!of) return [];
      const changedAt = changed.get(defect.id) ?? defect.enteredAt;
      return [{ defect, aircraft: of, title: titles.entry(of, defect), changedAt, base, invented }];
    });
  }

  private async lineOf(tx: Tx, id: string) {
    const row = await tx.calendarFeeds.get(id);
    const [line] = row ? await this.lines(tx, [row]) : [];
    if (!line) throw new Error(`Calendar feed ${id} was made and is not there.`);
    return line;
  }

  private async lines(tx: Tx, rows: readonly CalendarFeedRow[]) {
    const people = await tx.people.known([...new Set(rows.map(({ personId }) => personId))]);
    const aircraft = new Map((await tx.aircraft.list()).map((one) => [one.id, one.registration]));
    return rows.map(({ id, label, personId, aircraftId, everywhere, createdAt, revokedAt }) => ({
      id,
      label,
      of: people.get(personId)?.name ?? '(name erased)',
      aircraft: aircraftId,
      everywhere,
      registration: aircraftId === null ? null : (aircraft.get(aircraftId) ?? null),
      createdAt,
      revokedAt,
    }));
  }

  private async record(
    tx: Tx,
    session: Session,
    what: string,
    feed: string,
    aircraft: { id: string; registration: string } | null,
  ): Promise<void> {
    await tx.record.append({
      who: session.personId,
      authorisation: null,
      organisation: null,
      what,
      aircraft: aircraft && { id: aircraft.id, registration: aircraft.registration },
      times: { enteredAt: this.now() },
      payload: { feed },
    });
  }
}

function bothAsked(): Problem {
  const reason = 'a feed of one aircraft follows that aircraft, not you';
  return new Problem('invalid-input', reason, { errors: [{ pointer: '/everywhere', reason }] });
}

function hasEnd(defect: DefectRow): defect is Deadline['defect'] {
  return defect.endsAt !== null;
}
