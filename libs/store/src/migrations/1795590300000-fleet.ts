import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Stations, aircraft, the flights planned and flown, and the facts somebody answered. */
export class Fleet1795590300000 implements MigrationInterface {
  async up(run: QueryRunner): Promise<void> {
    await run.query(`
      create table station (
        operator_id uuid not null constraint station_operator references operator (id),
        code text not null,
        name text not null,
        zone text not null,
        primary key (operator_id, code)
      )`);
    await run.query(`
      create table aircraft (
        operator_id uuid not null constraint aircraft_operator references operator (id),
        id uuid not null,
        registration text not null,
        type text not null,
        serial integer,
        configuration text[],
        version integer not null default 1,
        primary key (operator_id, id),
        constraint aircraft_registration unique (operator_id, registration)
      )`);
    await run.query(`
      create table flight (
        operator_id uuid not null,
        id uuid not null,
        aircraft_id uuid not null,
        number text not null,
        from_station text not null,
        to_station text not null,
        off_block_at timestamptz(3) not null,
        on_block_at timestamptz(3),
        flight_minutes integer constraint flight_minutes_counted check (flight_minutes >= 0),
        state text not null default 'planned'
          constraint flight_state check (state in ('planned', 'flown', 'cancelled')),
        facts jsonb not null default '{}',
        version integer not null default 1,
        primary key (operator_id, id),
        constraint flight_aircraft foreign key (operator_id, aircraft_id) references aircraft (operator_id, id),
        constraint flight_from foreign key (operator_id, from_station) references station (operator_id, code),
        constraint flight_to foreign key (operator_id, to_station) references station (operator_id, code)
      )`);
    await run.query('create index flight_of_aircraft on flight (operator_id, aircraft_id, off_block_at)');
    await run.query(`
      create table fact (
        operator_id uuid not null,
        id uuid not null,
        aircraft_id uuid not null,
        flight_id uuid,
        key text not null,
        value jsonb,
        source text,
        answered_by uuid,
        observed_at timestamptz(3) not null,
        valid_until timestamptz(3),
        entered_at timestamptz(3) not null,
        primary key (operator_id, id),
        constraint fact_aircraft foreign key (operator_id, aircraft_id) references aircraft (operator_id, id),
        constraint fact_flight foreign key (operator_id, flight_id) references flight (operator_id, id),
        constraint fact_answered_by
          foreign key (operator_id, answered_by) references membership (operator_id, person_id)
      )`);
    await run.query('create index fact_of_aircraft on fact (operator_id, aircraft_id, flight_id, key, entered_at)');
    await run.query("call keep_to_operator('station')");
    await run.query("call keep_to_operator('aircraft')");
    await run.query("call keep_to_operator('flight')");
    await run.query("call keep_to_operator('fact')");
    await run.query("call keep_versions('aircraft')");
    await run.query("call keep_versions('flight')");
    await run.query("call keep_for_ever('fact')");
    await run.query(`
      grant select, insert on station to proviso_app;
      grant select, insert, update on aircraft, flight to proviso_app;
      grant select, insert on fact to proviso_app`);
  }

  async down(run: QueryRunner): Promise<void> {
    await run.query('drop table fact, flight, aircraft, station');
  }
}
