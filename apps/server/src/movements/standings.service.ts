import { Injectable } from '@nestjs/common';
import { standing } from '#deferrals';
import type { VerdictCode } from '#dispatch';
import type { Used } from '#intervals';
import type { AircraftRow, Tx } from '#store';
import { livesOf, type OpenedDefect } from '../defects/defect-book.js';
import { defectNumber } from '../defects/views.js';
import { DispatchService } from '../dispatch/dispatch.service.js';
import { countedFrom, countsFlights, usedOf } from '../dispatch/flown.js';
import { MelShelf } from '../mel/mel-shelf.js';
import { flownLegs } from './flown-legs.js';

const FLIGHTS_JUDGED = 5;

/** How one open item stands, as far as flying changes it. */
export interface ItemStands {
  used: Used | null;
  /** What is left, in words. */
  words: string;
  endsAt: string | null;
  over: boolean | null;
}

export interface AnswerStands {
  verdict: VerdictCode;
  words: string;
  why: string;
}

interface Stands {
  items: Map<string, { item: { number: string; description: string; aircraft: AircraftRow }; stands: ItemStands }>;
  answers: Map<
    string,
    { flight: { number: string; offBlockAt: string; aircraft: AircraftRow }; stands: AnswerStands }
  >;
}

/** What movements changed for the open items of some aircraft, and for the answers about their next flights. */
@Injectable()
export class StandingsService {
  constructor(
    private readonly dispatch: DispatchService,
    private readonly shelf: MelShelf,
  ) {}

  /** Does the work and tells what it changed. Hold the aircraft before. */
  async changedBy<T>(tx: Tx, aircraft: readonly AircraftRow[], now: string, work: () => Promise<T>) {
    // What is flown changes what is left of an item, and no item itself: each is read once.
    const opened = await livesOf(tx, await tx.defects.openOn(aircraft.map(({ id }) => id)));
    const before = await this.of(tx, aircraft, opened, now);
    const done = await work();
    const after = await this.of(tx, aircraft, opened, now);
    return { done, ...changes(before, after) };
  }

  private async of(
    tx: Tx,
    aircraft: readonly AircraftRow[],
    all: readonly OpenedDefect[],
    now: string,
  ): Promise<Stands> {
    const stands: Stands = { items: new Map(), answers: new Map() };
    for (const one of aircraft) {
      const opened = all.filter(({ row }) => row.aircraftId === one.id);
      const deferred = opened.filter(({ life }) => life.deferral !== null);
      if (deferred.length > 0) await this.items(tx, one, deferred, now, stands);
      const matters = deferred.some(({ life }) => countsFlights(life) || life.grants.length > 0);
      if (matters && (await this.shelf.inForce(tx, one.type))) await this.answers(tx, one, opened, now, stands);
    }
    return stands;
  }

  private async items(
    tx: Tx,
    aircraft: AircraftRow,
    deferred: readonly OpenedDefect[],
    now: string,
    { items }: Stands,
  ): Promise<void> {
    const legs = await flownLegs(tx, aircraft.id, countedFrom(deferred, now));
    const { counting } = (await this.dispatch.settings(tx)).deferral;
    for (const { row, life } of deferred) {
      const used = usedOf(life, legs, counting);
      const at = now < life.recordedAt ? life.enteredAt : now;
      const { left, overdue, deadline } = standing(life, at, used ?? {}, counting);
      const ends = left.flatMap(({ endsAt }) => endsAt ?? []).toSorted();
      const words = left.map(({ sentence }) => sentence).join(' ') || 'The basis sets no interval.';
      items.set(row.id, {
        item: { number: defectNumber(aircraft, row), description: life.description, aircraft },
        stands: { used, words, endsAt: ends[0] ?? deadline?.endsAt ?? null, over: overdue },
      });
    }
  }

  private async answers(
    tx: Tx,
    aircraft: AircraftRow,
    opened: readonly OpenedDefect[],
    now: string,
    { answers }: Stands,
  ): Promise<void> {
    const settings = await this.dispatch.settings(tx);
    for (const flight of await tx.flights.planned(aircraft.id, now, FLIGHTS_JUDGED)) {
      const { verdict, words, reasons } = await this.dispatch.judgeNow(tx, aircraft, flight, settings, {
        at: now,
        opened,
      });
      answers.set(flight.id, {
        flight: { number: flight.number, offBlockAt: flight.offBlockAt, aircraft },
        stands: { verdict, words, why: reasons[0] ?? words },
      });
    }
  }
}

function changes(before: Stands, after: Stands) {
  const items = [...after.items].flatMap(([defect, { item, stands }]) => {
    const was = before.items.get(defect)?.stands;
    if (!was || same(was, stands)) return [];
    const { number, description, aircraft } = item;
    const { id, registration } = aircraft;
    return [{ defect, number, description, aircraft: id, registration, before: was, after: stands }];
  });
  const answers = [...after.answers].flatMap(([id, { flight, stands }]) => {
    const was = before.answers.get(id)?.stands;
    if (!was || same(was, stands)) return [];
    const { number, offBlockAt, aircraft } = flight;
    const of = { aircraft: aircraft.id, registration: aircraft.registration };
    return [{ flight: id, number, offBlockAt, ...of, before: was, after: stands }];
  });
  return { items, answers };
}

export type Changes = ReturnType<typeof changes>;

function same(one: object, other: object): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}
