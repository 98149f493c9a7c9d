import type { MigrationInterface, QueryRunner } from 'typeorm';

/** What people state of the engines of an aircraft: counters read, and use that no leg tells. Every version is kept. */
export class CountsOfEngines1795602000000 implements MigrationInterface {
  async up(run: QueryRunner): Promise<void> {
    await run.query(`
      create table engine_count (
        operator_id uuid not null,
        id uuid not null,
        version integer not null constraint engine_count_version_counted check (version > 0),
        aircraft_id uuid not null,
        kind text not null constraint engine_count_kind check (kind in ('reading', 'run', 'withdrawn')),
        position text not null,
        serial text,
        at timestamptz(3) not null,
        minutes integer not null constraint engine_count_minutes_counted check (minutes >= 0),
        cycles integer not null constraint engine_count_cycles_counted check (cycles >= 0),
        reason text not null,
        person_id uuid not null,
        written_at timestamptz(3) not null,
        entry_id uuid not null,
        primary key (operator_id, id, version),
        constraint engine_count_reading_of_serial check (kind <> 'reading' or serial is not null),
        constraint engine_count_aircraft foreign key (operator_id, aircraft_id) references aircraft (operator_id, id),
        constraint engine_count_person
          foreign key (operator_id, person_id) references membership (operator_id, person_id),
        constraint engine_count_entry foreign key (operator_id, entry_id) references record_entry (operator_id, id)
      )`);
    await run.query('create index engine_count_of_aircraft on engine_count (operator_id, aircraft_id, at)');
    await run.query("call keep_to_operator('engine_count')");
    await run.query("call keep_for_ever('engine_count')");
    await run.query('grant select, insert on engine_count to proviso_app');
  }

  async down(run: QueryRunner): Promise<void> {
    await run.query('drop table engine_count');
  }
}
