import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Addresses under which a person's calendar program reads deadlines without signing in. Only their hashes are kept. */
export class CalendarFeeds1795591100000 implements MigrationInterface {
  async up(run: QueryRunner): Promise<void> {
    await run.query(`
      create table calendar_feed (
        operator_id uuid not null,
        id uuid not null,
        person_id uuid not null,
        token_hash text not null constraint calendar_feed_token_hash check (token_hash ~ '^[0-9a-f]{64}$'),
        aircraft_id uuid,
        label text not null,
        created_at timestamptz(3) not null,
        revoked_at timestamptz(3),
        version integer not null default 1,
        primary key (operator_id, id),
        constraint calendar_feed_token unique (operator_id, token_hash),
        constraint calendar_feed_person
          foreign key (operator_id, person_id) references membership (operator_id, person_id),
        constraint calendar_feed_aircraft foreign key (operator_id, aircraft_id) references aircraft (operator_id, id)
      )`);
    await run.query('create index calendar_feed_of_person on calendar_feed (operator_id, person_id)');
    await run.query("call keep_to_operator('calendar_feed')");
    await run.query("call keep_versions('calendar_feed')");
    await run.query('grant select, insert, update on calendar_feed to proviso_app');
  }

  async down(run: QueryRunner): Promise<void> {
    await run.query('drop table calendar_feed');
  }
}
