import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * Who was erased, when and by whom, for each operator the person worked for: what the list of erasures outside the
 * database is written from. Erasing without such a row is no longer possible for the server's role.
 */
export class ListOfErasures1795610000000 implements MigrationInterface {
  async up(run: QueryRunner): Promise<void> {
    await run.query(`
      create table erasure (
        operator_id uuid not null,
        person_id uuid not null,
        reference text not null,
        erased_at timestamptz(3) not null,
        erased_by text,
        primary key (operator_id, person_id),
        constraint erasure_person foreign key (operator_id, person_id) references membership (operator_id, person_id)
      )`);
    await run.query("call keep_for_ever('erasure')");
    await run.query("call keep_to_operator('erasure')");
    await run.query('grant select on erasure to proviso_app');
    await run.query(erasedBefore);
    await run.query(`
      create function erase_and_list(asked uuid, asked_at timestamptz, asked_by text) returns boolean
        language plpgsql volatile security definer set search_path = public, pg_temp as $$
      declare
        here text := current_setting('app.operator', true);
        works_at uuid;
      begin
        if not erase_person(asked, asked_at) then return false; end if;
        for works_at in select operator_id from membership where person_id = asked loop
          perform set_config('app.operator', works_at::text, true);
          insert into erasure (operator_id, person_id, reference, erased_at, erased_by)
            select works_at, id, reference, asked_at, asked_by from person where id = asked;
        end loop;
        perform set_config('app.operator', here, true);
        return true;
      end $$;
      revoke execute on function erase_and_list from public;
      revoke execute on function erase_person from proviso_app;
      grant execute on function erase_and_list to proviso_app`);
  }

  async down(run: QueryRunner): Promise<void> {
    await run.query('drop function erase_and_list');
    await run.query('grant execute on function erase_person to proviso_app');
    await run.query('drop table erasure');
  }
}

/** Those of a database that is older than this table: when and by whom stands in the record of the one who erased. */
const erasedBefore = `
  do $$
  declare one uuid;
  begin
    create temporary table told_erasure (reference text primary key, at timestamptz(3), who text) on commit drop;
    for one in select id from recorded_operators() loop
      perform set_config('app.operator', one::text, true);
      insert into told_erasure
        select convert_from(canonical, 'UTF8')::jsonb #>> '{payload,person}', entered_at, who
        from record_entry where operator_id = one and what = 'person.erased' on conflict do nothing;
    end loop;
    for one in select id from recorded_operators() loop
      perform set_config('app.operator', one::text, true);
      insert into erasure
        select one, p.id, p.reference, coalesce(told.at, m.valid_until), told.who
        from membership m join person p on p.id = m.person_id left join told_erasure told using (reference)
        where m.operator_id = one and p.salt is null;
    end loop;
    perform set_config('app.operator', '', true);
  end $$`;
