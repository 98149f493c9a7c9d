import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Who is authorised and equipped at a station and when, or that nobody is. A statement is ended, never deleted. */
export class PeopleAtStations1795592000000 implements MigrationInterface {
  async up(run: QueryRunner): Promise<void> {
    await run.query(`
      create table station_cover (
        operator_id uuid not null,
        id uuid not null,
        station text not null,
        person_id uuid,
        equipment text[] not null default '{}',
        from_at timestamptz(3),
        until_at timestamptz(3),
        source text not null,
        entered_by uuid,
        entered_at timestamptz(3) not null,
        ended_at timestamptz(3),
        version integer not null default 1,
        primary key (operator_id, id),
        constraint station_cover_from_before_until check (from_at < until_at),
        constraint station_cover_station foreign key (operator_id, station) references station (operator_id, code),
        constraint station_cover_person
          foreign key (operator_id, person_id) references membership (operator_id, person_id),
        constraint station_cover_entered_by
          foreign key (operator_id, entered_by) references membership (operator_id, person_id)
      )`);
    await run.query(
      'create index station_cover_in_force on station_cover (operator_id, station) where ended_at is null',
    );
    await run.query("call keep_to_operator('station_cover')");
    await run.query("call keep_versions('station_cover')");
    await run.query('grant select, insert, update on station_cover to proviso_app');
  }

  async down(run: QueryRunner): Promise<void> {
    await run.query('drop table station_cover');
  }
}
