import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * Movement messages as they came in, what of them waits for a person, and the legs worked out from them. What came in
 * and every version of a leg are kept for ever; a message changes only in whether it is used and when it first came.
 */
export class Movements1795590900000 implements MigrationInterface {
  async up(run: QueryRunner): Promise<void> {
    await run.query(`
      create table movement_delivery (
        operator_id uuid not null,
        id uuid not null,
        text text not null,
        sha256 text not null constraint movement_delivery_sha256 check (sha256 ~ '^[0-9a-f]{64}$'),
        came_by text not null
          constraint movement_delivery_came_by check (came_by in ('text', 'json', 'mended')),
        sent_by uuid,
        received_at timestamptz(3) not null,
        entered_at timestamptz(3) not null,
        entry_id uuid not null,
        primary key (operator_id, id),
        constraint movement_delivery_sent_by
          foreign key (operator_id, sent_by) references membership (operator_id, person_id),
        constraint movement_delivery_entry foreign key (operator_id, entry_id) references record_entry (operator_id, id)
      )`);
    await run.query(`
      create table movement_message (
        operator_id uuid not null,
        id uuid not null,
        delivery_id uuid not null,
        line integer not null,
        text text not null,
        sha256 text not null constraint movement_message_sha256 check (sha256 ~ '^[0-9a-f]{64}$'),
        received_at timestamptz(3) not null,
        entered_at timestamptz(3) not null,
        flight text,
        scheduled_on date,
        registration text,
        aircraft_id uuid,
        state text not null constraint movement_message_state check (state in ('read', 'tray', 'mended')),
        mends uuid,
        version integer not null default 1,
        primary key (operator_id, id),
        constraint movement_message_delivery
          foreign key (operator_id, delivery_id) references movement_delivery (operator_id, id),
        constraint movement_message_aircraft
          foreign key (operator_id, aircraft_id) references aircraft (operator_id, id),
        constraint movement_message_mends
          foreign key (operator_id, mends) references movement_message (operator_id, id)
      )`);
    await run.query(
      'create index movement_message_of_flight on movement_message (operator_id, flight, scheduled_on)',
    );
    await run.query('create index movement_message_by_text on movement_message (operator_id, sha256)');
    await run.query(`
      create table movement_tray (
        operator_id uuid not null,
        id uuid not null,
        message_id uuid not null,
        reason text not null,
        sentence text not null,
        opened_at timestamptz(3) not null,
        state text not null constraint movement_tray_state check (state in ('open', 'settled', 'mended')),
        closed_at timestamptz(3),
        closed_by uuid,
        why text,
        mended_with uuid,
        version integer not null default 1,
        primary key (operator_id, id),
        constraint movement_tray_message
          foreign key (operator_id, message_id) references movement_message (operator_id, id),
        constraint movement_tray_closed_by
          foreign key (operator_id, closed_by) references membership (operator_id, person_id),
        constraint movement_tray_mended_with
          foreign key (operator_id, mended_with) references movement_delivery (operator_id, id)
      )`);
    await run.query('create index movement_tray_by_state on movement_tray (operator_id, state, opened_at)');
    await run.query('create index movement_tray_of_message on movement_tray (operator_id, message_id)');
    await run.query(`
      create table leg (
        operator_id uuid not null,
        id uuid not null,
        version integer not null constraint leg_version_counted check (version > 0),
        aircraft_id uuid not null,
        flight text not null,
        scheduled_on date not null,
        sequence integer not null,
        from_station text,
        to_station text,
        ending text not null constraint leg_ending
          check (ending in ('arrived', 'returned', 'ramp', 'under-way', 'withdrawn')),
        off_block_at timestamptz(3) not null,
        airborne_at timestamptz(3),
        landed_at timestamptz(3),
        on_block_at timestamptz(3),
        block_minutes integer not null constraint leg_block_minutes_counted check (block_minutes >= 0),
        flight_minutes integer not null constraint leg_flight_minutes_counted check (flight_minutes >= 0),
        cycles integer not null constraint leg_cycles_counted check (cycles >= 0),
        landings integer not null constraint leg_landings_counted check (landings >= 0),
        missing text[] not null default '{}',
        delays jsonb not null default '[]',
        diverted_from text,
        diverted_reason text,
        flight_id uuid,
        source text not null constraint leg_source check (source in ('messages', 'person')),
        message_id uuid,
        person_id uuid,
        reason text,
        written_at timestamptz(3) not null,
        entry_id uuid not null,
        primary key (operator_id, id, version),
        constraint leg_aircraft foreign key (operator_id, aircraft_id) references aircraft (operator_id, id),
        constraint leg_flight foreign key (operator_id, flight_id) references flight (operator_id, id),
        constraint leg_message foreign key (operator_id, message_id) references movement_message (operator_id, id),
        constraint leg_person foreign key (operator_id, person_id) references membership (operator_id, person_id),
        constraint leg_entry foreign key (operator_id, entry_id) references record_entry (operator_id, id)
      )`);
    await run.query('create index leg_of_aircraft on leg (operator_id, aircraft_id, off_block_at)');
    await run.query('create index leg_of_flight on leg (operator_id, flight, scheduled_on)');
    await run.query('create index leg_of_plan on leg (operator_id, flight_id)');
    for (const table of ['movement_delivery', 'movement_message', 'movement_tray', 'leg'])
      await run.query(`call keep_to_operator('${table}')`);
    for (const table of ['movement_delivery', 'leg']) await run.query(`call keep_for_ever('${table}')`);
    for (const table of ['movement_message', 'movement_tray']) await run.query(`call keep_versions('${table}')`);
    await run.query(`
      grant select, insert on movement_delivery, movement_message, movement_tray, leg to proviso_app;
      grant update (state, received_at, version) on movement_message to proviso_app;
      grant update (state, closed_at, closed_by, why, mended_with, version) on movement_tray to proviso_app`);
  }

  async down(run: QueryRunner): Promise<void> {
    await run.query('drop table leg, movement_tray, movement_message, movement_delivery');
  }
}
