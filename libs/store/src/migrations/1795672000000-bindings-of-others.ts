import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * What binds somebody at another operator on the server is not named: an operator learns that there is something, and
 * neither aircraft nor items of the other.
 */
export class BindingsOfOthers1795672000000 implements MigrationInterface {
  async up(run: QueryRunner): Promise<void> {
    await run.query(binding(own(NAME), own(HELD)));
  }

  async down(run: QueryRunner): Promise<void> {
    await run.query(binding(NAME, HELD));
  }
}

const NAME = 'i.name';
const HELD = "case h.kind when 'person' then 'the person' when 'aircraft' then a.registration else i.name end";

/** A name of the operator that asks, and the same words for everything elsewhere. */
const own = (name: string): string =>
  `distinct case when one.id::text = here then ${name} else 'something at another operator on this server' end`;

/** As it was made, to the last space, with what it tells of open items and of holds. */
const binding = (open: string, held: string): string => `
  create or replace function binding_of_person(asked uuid)
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
          array(select ${open} from items i where i.closed_at is null order by 1),
          (select max(i.closed_at) from items i),
          array(
            select ${held}
            from hold h
            left join aircraft a on a.operator_id = one.id and h.kind = 'aircraft' and a.id = h.subject_id
              and exists (select from entries e where e.aircraft_id = a.id)
            left join items i on h.kind = 'defect' and i.id = h.subject_id
            where h.operator_id = one.id and h.released_at is null
              and (a.id is not null or i.id is not null or (h.kind = 'person' and h.subject_id = asked)) order by 1)
        from operator o where o.id = one.id;
    end loop;
    perform set_config('app.operator', here, true);
  end $$`;
