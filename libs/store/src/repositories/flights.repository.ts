import { MoreThanOrEqual, type FindOptionsWhere } from 'typeorm';
import { FlightTable, type FlightRow } from '../rows/flight.row.js';
import type { Fresh } from '../rows/fresh.js';
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

  /** The next planned flights of an aircraft that leave at or after an instant. */
  planned(aircraftId: string, at: string, limit: number): Promise<FlightRow[]> {
    return this.select({ aircraftId, state: 'planned', offBlockAt: MoreThanOrEqual(at) }, limit);
  }

  /** What an aircraft flew from an instant on: what counted intervals are counted from. */
  flown(aircraftId: string, from: string): Promise<FlightRow[]> {
    return this.select({ aircraftId, state: 'flown', offBlockAt: MoreThanOrEqual(from) });
  }

  /** @throws StaleVersion */
  change(id: string, seen: number, changes: Partial<FlightRow>): Promise<void> {
    return this.tx.change(FlightTable, id, seen, changes);
  }

  private select(where: FindOptionsWhere<FlightRow>, take?: number): Promise<FlightRow[]> {
    return this.tx.manager.find(FlightTable, {
      where: { ...where, operatorId: this.tx.operatorId },
      order: { offBlockAt: 'ASC', id: 'ASC' },
      take,
    });
  }
}
