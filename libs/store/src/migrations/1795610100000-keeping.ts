import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * What is kept beyond its period because somebody said so (a hold), what was noted to be past its period, and what of every
 * operator still binds the personal data of somebody. A reminder may be of no defect: it then tells what is past keeping.
 */
export class Keeping1795610100000 implements MigrationInterface {
  async up(run: QueryRunner): Promise<void> {
    await run.query(`
      create table hold (
        operator_id uuid not null,
        id uuid not null,
        kind text not null constraint hold_kind check (kind in ('person', 'aircraft', 'defect')),
        subject_id uuid not null,
        reason text not null,
        placed_at timestamptz(3) not null,
        placed_by uuid not null,
        released_at timestamptz(3),
        released_by uuid,
        released_because text,
        version integer not null default 1,
        primary key (operator_id, id),
        constraint hold_released check (
          (released_at is null) = (released_because is null) and (released_at is null) = (released_by is null)),
        constraint hold_placed_by foreign key (operator_id, placed_by) references membership (operator_id, person_id),
        constraint hold_released_by
          foreign key (operator_id, released_by) references membership (operator_id, person_id)
      )`);
    await run.query(
      'create unique index hold_once on hold (operator_id, kind, subject_id) where released_at is null',
    );
    await run.query(`
      create table past_keeping (
        operator_id uuid not null constraint past_keeping_operator references operator (id),
        kind text not null constraint past_keeping_kind check (kind in ('person', 'aircraft', 'defect')),
        subject_id uuid not null,
        noted_at timestamptz(3) not null,
        primary key (operator_id, kind, subject_id)
      )`);
    for (const table of ['hold', 'past_keeping']) await run.query(`call keep_to_operator('${table}')`);
    await run.query("call keep_versions('hold')");
    await run.query('grant select, insert, update on hold to proviso_app');
    await run.query('grant select, insert on past_keeping to proviso_app');
    await run.query('alter table reminder alter column defect_id drop not null');
    await run.query(binding);
    await run.query('drop function keeping_of_person');
  }

  async down(run: QueryRunner): Promise<void> {
    await run.query(keepingOfPerson);
    await run.query('drop function binding_of_person');
    await run.query('alter table reminder alter column defect_id set not null');
    await run.query('drop table past_keeping, hold');
  }
}

/** As it was made, to the last space. */
const keepingOfPerson = `
      create function keeping_of_person(asked uuid)
        returns table (operator_id uuid, valid_until timestamptz, settings jsonb, base text)
        language sql stable security definer set search_path = public, pg_temp as $$
          select o.id, m.valid_until, o.settings, o.base
          from membership m join operator o on o.id = m.operator_id
          where m.person_id = asked and exists (select from membership own where own.person_id = asked
            and own.operator_id = nullif(current_setting('app.operator', true), '')::uuid) $$;
      revoke execute on function keeping_of_person from public;
      grant execute on function keeping_of_person to proviso_app`;

/** One row for each operator the person worked for: its items with an entry of the person, open and closed, and holds. */
const binding = `
  create function binding_of_person(asked uuid)
    returns table (operator_id uuid, valid_until timestamptz, settings jsonb, base text,
      open_items text[], last_closed_at timestamptz, held text[])
    language plpgsql volatile security definer set search_path = public, pg_temp as $$
  declare
    here text := current_setting('app.operator', true);
    known text; one record;
  begin
    select p.reference into known from person p where p.id = asked and exists (select from membership own
      where own.person_id = asked and own.operator_id = nullif(here, '')::uuid);
    if known is null then return; end if;
    for one in select m.operator_id as id, m.valid_until as until from membership m where m.person_id = asked loop
      perform set_config('app.operator', one.id::text, true);
      return query
        with entries as (
          select e.aircraft_id, convert_from(e.canonical, 'UTF8')::jsonb #> '{payload,number}' as number
          from record_entry e where e.operator_id = one.id and e.who = known and e.aircraft_id is not null),
        items as (
          select distinct d.id, d.closed_at, a.registration || '/' || d.number as name
          from entries e join aircraft a on a.operator_id = one.id and a.id = e.aircraft_id
          join defect d on d.operator_id = one.id and d.aircraft_id = e.aircraft_id and to_jsonb(d.number) = e.number)
        select o.id, one.until, o.settings, o.base,
          array(select i.name from items i where i.closed_at is null order by 1),
          (select max(i.closed_at) from items i),
          array(
            select case h.kind when 'person' then 'the person' when 'aircraft' then a.registration else i.name end
            from hold h
            left join aircraft a on a.operator_id = one.id and h.kind = 'aircraft' and a.id = h.subject_id
              and exists (select from entries e where e.aircraft_id = a.id)
            left join items i on h.kind = 'defect' and i.id = h.subject_id
            where h.operator_id = one.id and h.released_at is null
              and (a.id is not null or i.id is not null or (h.kind = 'person' and h.subject_id = asked)) order by 1)
        from operator o where o.id = one.id;
    end loop;
    perform set_config('app.operator', here, true);
  end $$;
  revoke execute on function binding_of_person from public;
  grant execute on function binding_of_person to proviso_app`;
