import { Between, In, MoreThanOrEqual, Not, type FindOptionsWhere, type SelectQueryBuilder } from 'typeorm';
import { FlightTable, type FlightRow } from '../rows/flight.row.js';
import type { Fresh } from '../rows/fresh.js';
import { hasFlown, isNewest } from './legs.repository.js';
import type { Transaction } from '../transaction.js';

export class Flights {
  constructor(private readonly tx: Transaction) {}

  add(flight: Fresh<FlightRow, 'state' | 'facts'>): Promise<string> {
    return this.tx.insert(FlightTable, flight);
  }

  get(id: string): Promise<FlightRow | null> {
    return this.tx.manager.findOneBy(FlightTable, { operatorId: this.tx.operatorId, id });
  }

  /** All flights of an aircraft in the order they leave. */
  ofAircraft(aircraftId: string): Promise<FlightRow[]> {
    return this.select({ aircraftId });
  }

  /** The next planned flights of an aircraft that leave at or after an instant, and that no leg tells were flown. */
  planned(aircraftId: string, at: string, limit: number): Promise<FlightRow[]> {
    return this.plannedFrom(aircraftId, at).take(limit).getMany();
  }

  /** One flight, where it is among those. */
  plannedStill(id: string, aircraftId: string, at: string): Promise<FlightRow | null> {
    return this.plannedFrom(aircraftId, at).andWhere('flight.id = :id', { id }).getOne();
  }

  /** Holds the lists of flights for the rest of the transaction: of two that are planned at the same moment, one is later. */
  async holdLists(): Promise<void> {
    const name = JSON.stringify(['flight-lists', this.tx.operatorId]);
    await this.tx.query('select pg_advisory_xact_lock(hashtextextended($1, 0))', [name]);
    this.tx.forget();
  }

  /** Those of these flights that legs tell are on blocks again, at the end or back where they left. */
  async onBlocks(ids: readonly string[]): Promise<ReadonlySet<string>> {
    if (ids.length === 0) return new Set();
    const rows = await this.tx.query<{ id: string }>(
      `select leg.flight_id as id from leg
       where leg.operator_id = $1 and leg.flight_id = any($2::uuid[]) and ${isNewest}
       group by leg.flight_id
       having bool_or(leg.ending in ('arrived', 'returned')) and not bool_or(leg.ending = 'under-way')`,
      [this.tx.operatorId, ids],
    );
    return new Set(rows.map(({ id }) => id));
  }

  /** Not cancelled, of any of these aircraft, leaving between two instants as planned. */
  between(aircraftIds: readonly string[], from: string, until: string): Promise<FlightRow[]> {
    return this.select({
      aircraftId: In([...aircraftIds]),
      state: Not('cancelled'),
      offBlockAt: Between(from, until),
    });
  }

  /** What an aircraft flew from an instant on: what counted intervals are counted from. */
  flown(aircraftId: string, from: string): Promise<FlightRow[]> {
    return this.select({ aircraftId, state: 'flown', offBlockAt: MoreThanOrEqual(from) });
  }

  /** The same of several aircraft in one question. */
  flownByAll(aircraftIds: readonly string[], from: string): Promise<FlightRow[]> {
    return this.select({ aircraftId: In([...aircraftIds]), state: 'flown', offBlockAt: MoreThanOrEqual(from) });
  }

  /** @throws StaleVersion */
  change(id: string, seen: number, changes: Partial<FlightRow>): Promise<void> {
    return this.tx.change(FlightTable, id, seen, changes);
  }

  private plannedFrom(aircraftId: string, at: string): SelectQueryBuilder<FlightRow> {
    const { operatorId, manager } = this.tx;
    return manager
      .createQueryBuilder(FlightTable, 'flight')
      .where("flight.operator_id = :operatorId and flight.aircraft_id = :aircraftId and flight.state = 'planned'", {
        operatorId,
        aircraftId,
      })
      .andWhere('flight.off_block_at >= :at', { at })
      .andWhere(
        `not exists (select from leg where leg.operator_id = flight.operator_id and leg.flight_id = flight.id
         and ${hasFlown} and ${isNewest})`,
      )
      .orderBy({ 'flight.offBlockAt': 'ASC', 'flight.id': 'ASC' });
  }

  private select(where: FindOptionsWhere<FlightRow>, take?: number): Promise<FlightRow[]> {
    return this.tx.manager.find(FlightTable, {
      where: { ...where, operatorId: this.tx.operatorId },
      order: { offBlockAt: 'ASC', id: 'ASC' },
      take,
    });
  }
}
