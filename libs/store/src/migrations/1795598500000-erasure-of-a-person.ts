import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * Personal data are erased and the record stands: it knows a person by the reference alone, and with the salt gone the
 * reference names nobody. The row stays, because what the person signed points at it. A person may have worked for
 * several operators: the functions look at all of them, and one that still employs the person holds the erasure up.
 */
export class ErasureOfAPerson1795598500000 implements MigrationInterface {
  async up(run: QueryRunner): Promise<void> {
    await run.query('alter table person alter column salt drop not null');
    await run.query(`
      create function keeping_of_person(asked uuid)
        returns table (operator_id uuid, valid_until timestamptz, settings jsonb, base text)
        language sql stable security definer set search_path = public, pg_temp as $$
          select o.id, m.valid_until, o.settings, o.base
          from membership m join operator o on o.id = m.operator_id
          where m.person_id = asked and exists (select from membership own where own.person_id = asked
            and own.operator_id = nullif(current_setting('app.operator', true), '')::uuid) $$`);
    await run.query(`
      create function erase_person(asked uuid, asked_at timestamptz) returns boolean
        language plpgsql volatile security definer set search_path = public, pg_temp as $$
      declare
        here text := current_setting('app.operator', true);
        known text; works_at uuid;
      begin
        if not exists (select from membership where person_id = asked and operator_id = nullif(here, '')::uuid)
          or exists (select from membership
            where person_id = asked and (valid_until is null or valid_until > asked_at)) then
          return false;
        end if;
        select name into known from person where id = asked and salt is not null for update;
        if known is null then return false; end if;
        delete from challenge where person_id = asked;
        delete from passkey where person_id = asked;
        delete from sign_on_identity where person_id = asked;
        delete from session where person_id = asked;
        delete from credential where person_id = asked;
        for works_at in select operator_id from membership where person_id = asked loop
          perform set_config('app.operator', works_at::text, true);
          delete from idempotency where person_id = asked or position(known in body) > 0;
          update reminder_address set address = '(erased)', label = '(erased)', version = version + 1,
            secret = case when secret is null then null else '' end, former_secret = null, former_until = null,
            ended_at = coalesce(ended_at, asked_at), ended_because = coalesce(ended_because, 'personal data erased')
            where person_id = asked and not for_all;
          update calendar_feed set label = '(erased)', version = version + 1,
            revoked_at = coalesce(revoked_at, asked_at) where person_id = asked;
        end loop;
        perform set_config('app.operator', here, true);
        update person set name = '(name erased) ' || left(reference, 16), licence_number = null, salt = null
          where id = asked;
        return true;
      end $$`);
    await run.query(`
      revoke execute on function keeping_of_person, erase_person from public;
      grant execute on function keeping_of_person, erase_person to proviso_app`);
  }

  async down(run: QueryRunner): Promise<void> {
    await run.query('drop function erase_person, keeping_of_person');
    await run.query('alter table person alter column salt set not null');
  }
}
