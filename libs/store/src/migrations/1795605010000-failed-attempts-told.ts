import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * Attempts in vain that were made under somebody's name are kept for that person, until the person says that they were
 * seen: a success takes back what was counted, and would hide them. Only a number is kept.
 */
export class FailedAttemptsTold1795605010000 implements MigrationInterface {
  async up(run: QueryRunner): Promise<void> {
    await run.query(`
      create table failed_attempt (
        person_id uuid primary key constraint failed_attempt_person references person (id),
        failed integer not null constraint failed_attempt_counted check (failed > 0)
      )`);
    await run.query('alter table failed_attempt enable row level security');
    await run.query(`
      create policy of_person on failed_attempt
        using (person_id = nullif(current_setting('app.person', true), '')::uuid)`);
    await run.query('grant select, delete on failed_attempt to proviso_app');
    await run.query(`
      create or replace function take_back_attempts(asked text) returns void
        language sql volatile security definer set search_path = public, pg_temp as $$
          with gone as (delete from sign_in_attempt where name_sha256 = digest_of_name(asked) returning failed_count)
          insert into failed_attempt as kept (person_id, failed)
            select c.person_id, gone.failed_count - 1 from gone join credential c on c.sign_in_name = asked
            where gone.failed_count > 1
          on conflict (person_id) do update set failed = kept.failed + excluded.failed $$`);
  }

  async down(run: QueryRunner): Promise<void> {
    await run.query(`
      create or replace function take_back_attempts(asked text) returns void
        language sql volatile security definer set search_path = public, pg_temp as
        $$ delete from sign_in_attempt where name_sha256 = digest_of_name(asked) $$`);
    await run.query('drop table failed_attempt');
  }
}
