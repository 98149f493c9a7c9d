import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * The newest time-zone data that an operator's open deadlines were counted with, and each deadline that it put at another
 * instant. A difference stays, so that a stored deadline reads alike for as long as it is kept.
 */
export class ZoneData1795593000000 implements MigrationInterface {
  async up(run: QueryRunner): Promise<void> {
    await run.query('alter table operator add column tzdb text');
    await run.query(`
      create table zone_difference (
        operator_id uuid not null,
        id uuid not null,
        defect_id uuid not null,
        zone text not null,
        tzdb_before text not null,
        tzdb_after text not null,
        ends_before timestamptz(3) not null,
        ends_after timestamptz(3) not null,
        found_at timestamptz(3) not null,
        confirmed_at timestamptz(3),
        confirmed_by uuid,
        version integer not null default 1,
        primary key (operator_id, id),
        constraint zone_difference_once unique (operator_id, defect_id, zone, tzdb_before, ends_before, tzdb_after),
        constraint zone_difference_differs check (ends_before <> ends_after),
        constraint zone_difference_confirmed check ((confirmed_at is null) = (confirmed_by is null)),
        constraint zone_difference_defect foreign key (operator_id, defect_id) references defect (operator_id, id),
        constraint zone_difference_person
          foreign key (operator_id, confirmed_by) references membership (operator_id, person_id)
      )`);
    await run.query("call keep_to_operator('zone_difference')");
    await run.query("call keep_versions('zone_difference')");
    await run.query('grant select, insert, update on zone_difference to proviso_app');
  }

  async down(run: QueryRunner): Promise<void> {
    await run.query('drop table zone_difference');
    await run.query('alter table operator drop column tzdb');
  }
}
