import { Inject, Injectable } from '@nestjs/common';
import type {
  AircraftRow,
  FlightOfDay,
  LegRow,
  MovementDeliveryRow,
  MovementMessageRow,
  MovementTrayRow,
  Tx,
} from '#store';
import { DispatchService } from '../dispatch/dispatch.service.js';
import { Problem } from '../http/problem.js';
import { CLOCK, type Clock } from '../http/tokens.js';
import { gather, type Gathered, keyOf, type Waiting } from './gather.js';
import { writeLegs } from './leg-book.js';
import { type ReadMessage, type Reading, readDelivery, readingOf, sha256Of } from './reading.js';
import { sortedOut, type SortedMessage } from './sort-out.js';
import { type Changes, StandingsService } from './standings.service.js';
import { keepTray } from './tray-book.js';
import { type WorkedOut, workOut } from './work-out.js';

const MOST_MESSAGES = 1000;
const DAY = 86_400_000;

/** Who sends it; no person where the program itself took it out of a folder. */
export interface Sender {
  personId: string | null;
}

export interface Delivery {
  text: string;
  receivedAt: string;
  cameBy: MovementDeliveryRow['cameBy'];
  /** The message in whose place a person sends this. */
  mends: MovementMessageRow | null;
}

/** A message of the delivery with the row it became, or had become before. */
export interface TakenIn {
  read: ReadMessage;
  row: MovementMessageRow;
  isNew: boolean;
}

export interface Received extends Changes {
  /** Null when it brought nothing new, and nothing was kept. */
  deliveryId: string | null;
  messages: TakenIn[];
  legs: LegRow[];
  opened: MovementTrayRow[];
  settled: MovementTrayRow[];
}

/** Takes movement messages in: what came is kept, legs are worked out anew, and what they changed is told. */
@Injectable()
export class IntakeService {
  constructor(
    @Inject(CLOCK) private readonly now: Clock,
    private readonly dispatch: DispatchService,
    private readonly standings: StandingsService,
  ) {}

  async reading(tx: Tx): Promise<Reading> {
    return readingOf(await tx.operators.current(), await this.dispatch.settings(tx));
  }

  /** What stands in a text. @throws Problem when that is nothing, or too much for one delivery */
  read(text: string, receivedAt: string, reading: Reading): ReadMessage[] {
    const messages = readDelivery(text, receivedAt, reading);
    const refuse = (reason: string) => {
      throw new Problem('invalid-input', reason, { errors: [{ pointer: '/text', reason }] });
    };
    if (messages.length === 0) refuse('the text holds no message');
    if (messages.length > MOST_MESSAGES) {
      refuse(`the text holds ${messages.length} messages; ${MOST_MESSAGES} are taken at once`);
    }
    return messages;
  }

  /** Take the intake first (`takeIntake`). */
  async receive(tx: Tx, by: Sender, delivery: Delivery, messages: readonly ReadMessage[]): Promise<Received> {
    const now = this.now();
    const sorted = await sortedOut(tx, messages, now, delivery.mends !== null);
    const earlier = await this.firstReceipts(tx, by, sorted, now);
    const fresh = sorted.filter(({ known }) => known === null);
    const kept = fresh.length === 0 ? null : await this.keep(tx, by, delivery, fresh, now);
    const rows = [...(kept?.rows ?? []), ...earlier];
    const derived = await this.derive(tx, by, flightsOf([...rows, ...(delivery.mends ? [delivery.mends] : [])]));
    return {
      ...derived,
      deliveryId: kept?.id ?? null,
      messages: sorted.map(({ read, known }) => ({ read, row: rowOf(read, rows, known), isNew: known === null })),
      opened: [...(kept?.opened ?? []), ...derived.opened],
    };
  }

  /** All that waits about the flight of a message, whether the tray holds it or a person looked at it. */
  async waitsAbout(tx: Tx, message: MovementMessageRow): Promise<Waiting[]> {
    return (await gather(tx, flightsOf([message]), await this.reading(tx))).waiting;
  }

  /** Works the legs of these flights out anew, and those beside them. */
  private async derive(tx: Tx, by: Sender, flights: readonly FlightOfDay[]) {
    const nothing = { legs: [], opened: [], settled: [], items: [], answers: [] };
    if (flights.length === 0) return nothing;
    const now = this.now();
    const reading = await this.reading(tx);
    const gathered = await gather(tx, flights, reading);
    const aircraft = await tx.aircraft.lockAll(aircraftIn(gathered));
    const { versions, waiting } = await this.workedOut(tx, gathered, aircraft, reading);
    const tray = await keepTray(tx, gathered.messages, waiting, now);
    if (versions.length === 0) return { ...nothing, ...tray };
    const moved = new Set(
      versions.flatMap(({ of, content }) => [of?.aircraftId ?? content.aircraftId, content.aircraftId]),
    );
    const touched = aircraft.filter(({ id }) => moved.has(id));
    const said = { source: 'messages' as const, personId: by.personId, reason: null, now };
    const { done, items, answers } = await this.standings.changedBy(tx, touched, now, () =>
      writeLegs(tx, versions, aircraft, said),
    );
    return { legs: done, ...tray, items, answers };
  }

  private async workedOut(
    tx: Tx,
    gathered: Gathered,
    aircraft: readonly AircraftRow[],
    { airlineCodes }: Reading,
  ): Promise<WorkedOut> {
    const ids = aircraft.map(({ id }) => id);
    const starts = [...gathered.told, ...gathered.stored].map(({ offBlockAt }) => Date.parse(offBlockAt));
    if (ids.length === 0 || starts.length === 0) return { versions: [], waiting: gathered.waiting };
    const from = new Date(Math.min(...starts) - 3 * DAY).toISOString();
    const until = new Date(Math.max(...starts) + 3 * DAY).toISOString();
    const people = await tx.legs.ofPeople(ids, from, until);
    const byPeople = people.length === 0 ? [] : await tx.legs.versions(people.map(({ id }) => id));
    const flights = await tx.flights.between(ids, from, until);
    return workOut(gathered, { byPeople, flights, airlineCodes });
  }

  /** A message that came before its first receipt after all counts from then: deliveries may arrive in any order. */
  private async firstReceipts(
    tx: Tx,
    by: Sender,
    sorted: readonly SortedMessage[],
    now: string,
  ): Promise<MovementMessageRow[]> {
    const earlier = sorted.flatMap(({ read: { receivedAt }, known }) =>
      known?.state === 'read' && receivedAt < known.receivedAt ? [{ ...known, receivedAt }] : [],
    );
    for (const { id, version, receivedAt } of earlier) await tx.movements.changeMessage(id, version, { receivedAt });
    if (earlier.length === 0) return [];
    await tx.record.append({
      who: by.personId,
      authorisation: null,
      organisation: null,
      what: 'movements.received-earlier',
      aircraft: null,
      times: { enteredAt: now },
      payload: { messages: earlier.map(({ id, sha256, receivedAt }) => ({ message: id, sha256, receivedAt })) },
    });
    return earlier;
  }

  private async keep(tx: Tx, by: Sender, delivery: Delivery, fresh: readonly SortedMessage[], now: string) {
    const { text, cameBy, mends } = delivery;
    const receivedAt = new Date(delivery.receivedAt).toISOString();
    const only = new Set(fresh.map(({ aircraft }) => aircraft));
    const [aircraft = null] = only.size === 1 ? only : [];
    const { id: entryId } = await tx.record.append({
      who: by.personId,
      authorisation: null,
      organisation: null,
      what: 'movements.received',
      aircraft,
      times: { recordedAt: receivedAt, enteredAt: now },
      payload: {
        cameBy,
        sha256: sha256Of(text),
        mends: mends?.id ?? null,
        messages: fresh.map(({ read, tray }) => ({
          sha256: read.sha256,
          text: read.text,
          flight: read.said?.flight ?? null,
          scheduledOn: read.said?.scheduledOn ?? null,
          registration: read.said?.registration ?? null,
          tray: tray?.reason ?? null,
        })),
      },
    });
    const id = await tx.movements.addDelivery({
      text,
      sha256: sha256Of(text),
      cameBy,
      sentBy: by.personId,
      receivedAt,
      enteredAt: now,
      entryId,
    });
    const rows = await tx.movements.addMessages(
      fresh.map(({ read, aircraft: of, tray }) => ({
        deliveryId: id,
        line: read.line,
        text: read.text,
        sha256: read.sha256,
        receivedAt: read.receivedAt,
        enteredAt: now,
        flight: read.said?.flight ?? null,
        scheduledOn: read.said?.scheduledOn ?? null,
        registration: read.said?.registration ?? null,
        aircraftId: of?.id ?? null,
        state: tray ? ('tray' as const) : ('read' as const),
        mends: mends?.id ?? null,
      })),
    );
    const opened = await tx.movements.openTray(
      fresh.flatMap(({ read, tray }) => (tray ? [{ messageId: rowOf(read, rows).id, ...tray, openedAt: now }] : [])),
    );
    return { id, rows, opened };
  }
}

function rowOf(
  read: ReadMessage,
  rows: readonly MovementMessageRow[],
  known: MovementMessageRow | null = null,
): MovementMessageRow {
  const day = read.said?.scheduledOn ?? null;
  const row = rows.find(({ sha256, scheduledOn }) => sha256 === read.sha256 && scheduledOn === day) ?? known;
  if (!row) throw new Error('A message was read and not kept.');
  return row;
}

function flightsOf(rows: readonly MovementMessageRow[]): FlightOfDay[] {
  const found = rows.flatMap(({ flight, scheduledOn, aircraftId }) =>
    flight !== null && scheduledOn !== null && aircraftId !== null ? [{ flight, scheduledOn }] : [],
  );
  return [...new Map(found.map((flight) => [keyOf(flight), flight])).values()];
}

function aircraftIn({ messages, stored }: Gathered): string[] {
  return [...new Set([...messages, ...stored].flatMap(({ aircraftId }) => aircraftId ?? []))];
}
