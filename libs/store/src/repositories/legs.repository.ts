import { In, type SelectQueryBuilder } from 'typeorm';
import { LegTable, type LegRow } from '../rows/leg.row.js';
import type { Transaction } from '../transaction.js';
import type { FlightOfDay } from './movements.repository.js';

/** Where a leg begins, seen from another one. */
export interface LegPlace extends FlightOfDay {
  aircraftId: string;
  offBlockAt: string;
}

/** In SQL, of a row called leg: it left the ground. */
export const hasFlown = '(leg.airborne_at is not null or leg.flight_minutes > 0 or leg.cycles > 0)';
/** In SQL, of a row called leg: it is the version that counts. */
export const isNewest = `not exists (select from leg newer
  where newer.operator_id = leg.operator_id and newer.id = leg.id and newer.version > leg.version)`;

/** The newest version of each leg counts. Versions are added at the end, never changed. */
export class Legs {
  constructor(private readonly tx: Transaction) {}

  /** Hold the aircraft: a second version under the same number is refused by the database. */
  async add(versions: readonly Omit<LegRow, 'operatorId'>[]): Promise<void> {
    const { operatorId, manager } = this.tx;
    if (versions.length > 0)
      await manager.insert(
        LegTable,
        versions.map((leg) => ({ ...leg, operatorId })),
      );
  }

  async get(id: string): Promise<LegRow | null> {
    return this.newest().andWhere('leg.id = :id', { id }).getOne();
  }

  /** Every version of these legs, the first one first. */
  versions(ids: readonly string[]): Promise<LegRow[]> {
    const { operatorId, manager } = this.tx;
    return manager.find(LegTable, {
      where: { operatorId, id: In([...ids]) },
      order: { id: 'ASC', version: 'ASC' },
    });
  }

  async ofFlights(flights: readonly FlightOfDay[]): Promise<LegRow[]> {
    if (flights.length === 0) return [];
    return this.newest()
      .andWhere('(leg.flight, leg.scheduled_on) in (select * from unnest(:names::text[], :days::date[]))', {
        names: flights.map(({ flight }) => flight),
        days: flights.map(({ scheduledOn }) => scheduledOn),
      })
      .getMany();
  }

  /** Legs of an aircraft that left from an instant on and before another, withdrawn ones left out, in the order flown. */
  flown(aircraftId: string, from: string, until: string | null = null): Promise<LegRow[]> {
    const legs = this.of([aircraftId]).andWhere("leg.ending <> 'withdrawn' and leg.off_block_at >= :from", { from });
    if (until !== null) legs.andWhere('leg.off_block_at < :until', { until });
    return legs.getMany();
  }

  /** The same of several aircraft in one question. */
  async flownByAll(aircraftIds: readonly string[], from: string): Promise<LegRow[]> {
    if (aircraftIds.length === 0) return [];
    return this.of(aircraftIds)
      .andWhere("leg.ending <> 'withdrawn' and leg.off_block_at >= :from", { from })
      .getMany();
  }

  /** Legs that a person entered or corrected, withdrawn ones too. */
  ofPeople(aircraftIds: readonly string[], from: string, until: string): Promise<LegRow[]> {
    return this.of(aircraftIds)
      .andWhere("leg.source = 'person' and leg.off_block_at between :from and :until", { from, until })
      .getMany();
  }

  /** The flights whose legs come next before and after these places in what messages tell of the same aircraft. */
  async besides(places: readonly LegPlace[]): Promise<FlightOfDay[]> {
    if (places.length === 0) return [];
    const beside = (order: 'asc' | 'desc') => `
      (select leg.flight, leg.scheduled_on from leg
       where leg.operator_id = $1 and leg.aircraft_id = at.aircraft_id
         and leg.off_block_at ${order === 'asc' ? '>=' : '<='} at.off_block_at
         and (leg.flight, leg.scheduled_on) <> (at.flight, at.scheduled_on)
         and leg.source = 'messages' and leg.ending <> 'withdrawn' and ${isNewest}
       order by leg.off_block_at ${order} limit 1)`;
    return this.tx.query<FlightOfDay>(
      `select distinct near.flight, near.scheduled_on::text as "scheduledOn"
       from unnest($2::uuid[], $3::timestamptz[], $4::text[], $5::date[])
         as at (aircraft_id, off_block_at, flight, scheduled_on)
       cross join lateral (${beside('asc')} union all ${beside('desc')}) near`,
      [
        this.tx.operatorId,
        places.map(({ aircraftId }) => aircraftId),
        places.map(({ offBlockAt }) => offBlockAt),
        places.map(({ flight }) => flight),
        places.map(({ scheduledOn }) => scheduledOn),
      ],
    );
  }

  private of(aircraftIds: readonly string[]): SelectQueryBuilder<LegRow> {
    return this.newest()
      .andWhere('leg.aircraft_id in (:...aircraftIds)', { aircraftIds: [...aircraftIds] })
      .orderBy({ 'leg.offBlockAt': 'ASC', 'leg.id': 'ASC' });
  }

  private newest(): SelectQueryBuilder<LegRow> {
    const { operatorId, manager } = this.tx;
    return manager
      .createQueryBuilder(LegTable, 'leg')
      .where('leg.operator_id = :operatorId', { operatorId })
      .andWhere(isNewest);
  }
}
