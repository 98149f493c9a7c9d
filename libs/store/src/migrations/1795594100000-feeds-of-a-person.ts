import type { MigrationInterface, QueryRunner } from 'typeorm';

/** A calendar feed may follow its person to every operator that the person works for. */
export class FeedsOfAPerson1795594100000 implements MigrationInterface {
  async up(run: QueryRunner): Promise<void> {
    await run.query(`
      alter table calendar_feed add column everywhere boolean not null default false,
        add constraint calendar_feed_of_one check (not everywhere or aircraft_id is null)`);
  }

  async down(run: QueryRunner): Promise<void> {
    await run.query('alter table calendar_feed drop column everywhere');
  }
}
