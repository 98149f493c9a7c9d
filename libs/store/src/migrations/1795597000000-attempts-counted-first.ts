import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * An attempt to prove a secret is counted before the secret is looked at, and taken back when it was right: of many sent
 * at once no more are looked at than the lock allows. Counted is the name that was entered, whether anybody has it or
 * not, so that neither the lock nor the time it takes tells which names there are. Kept is a digest of the name, since what people enter
 * there by mistake is sometimes their secret.
 */
export class AttemptsCountedFirst1795597000000 implements MigrationInterface {
  async up(run: QueryRunner): Promise<void> {
    await run.query(`
      create table sign_in_attempt (
        name_sha256 text primary key constraint sign_in_attempt_name_sha256 check (name_sha256 ~ '^[0-9a-f]{64}$'),
        failed_count integer not null,
        last_at timestamptz(3) not null,
        locked_until timestamptz(3)
      )`);
    await run.query('create index sign_in_attempt_age on sign_in_attempt (last_at)');
    await run.query('alter table sign_in_attempt enable row level security');
    await run.query('alter table credential drop column failed_count, drop column locked_until');
    await run.query(`
      create function digest_of_name(asked text) returns text language sql immutable set search_path = pg_catalog, pg_temp as
        $$ select encode(sha256(convert_to(asked, 'UTF8')), 'hex') $$;
      create function count_attempt(asked text, asked_at timestamptz, locks_from integer, locks_until timestamptz)
        returns table (counted boolean, until_at timestamptz)
        language plpgsql volatile security definer set search_path = public, pg_temp as $$
      begin
        delete from sign_in_attempt where name_sha256 in (
          select name_sha256 from sign_in_attempt where last_at < asked_at - interval '1 day'
          order by last_at limit 2 for update skip locked);
        insert into sign_in_attempt as a (name_sha256, failed_count, last_at) values (digest_of_name(asked), 1, asked_at)
        on conflict (name_sha256) do update set failed_count = a.failed_count + 1, last_at = asked_at,
          locked_until = case when a.failed_count + 1 >= locks_from then locks_until end
          where a.locked_until is null or a.locked_until <= asked_at;
        counted := found;
        select locked_until into until_at from sign_in_attempt where name_sha256 = digest_of_name(asked);
        return next;
      end $$;
      create function take_back_attempts(asked text) returns void
        language sql volatile security definer set search_path = public, pg_temp as
        $$ delete from sign_in_attempt where name_sha256 = digest_of_name(asked) $$;
      create function credential_of(asked uuid)
        returns table (person_id uuid, sign_in_name text, hash text, locked_until timestamptz)
        language sql stable security definer set search_path = public, pg_temp as $$
          select c.person_id, c.sign_in_name, c.hash, a.locked_until
          from credential c left join sign_in_attempt a on a.name_sha256 = digest_of_name(c.sign_in_name)
          where c.person_id = asked $$;
      revoke execute on function count_attempt, take_back_attempts, credential_of from public;
      grant execute on function count_attempt, take_back_attempts, credential_of to proviso_app`);
  }

  async down(run: QueryRunner): Promise<void> {
    await run.query('drop function credential_of, take_back_attempts, count_attempt, digest_of_name');
    await run.query(`alter table credential add column failed_count integer not null default 0,
      add column locked_until timestamptz(3)`);
    await run.query('drop table sign_in_attempt');
  }
}
