import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * What is left on an aircraft and belongs to no defect has acts of its own, kept for ever like those of defects; and each
 * thing says which document owns it, under which procedure it was left, and when its removal was seen by another person.
 */
export class RegisterOfAircraft1795596000000 implements MigrationInterface {
  async up(run: QueryRunner): Promise<void> {
    await run.query(`
      create table register_act (
        operator_id uuid not null,
        aircraft_id uuid not null,
        seq integer not null,
        id uuid not null,
        kind text not null,
        at timestamptz(3) not null,
        person_id uuid,
        payload jsonb not null,
        entry_id uuid not null,
        primary key (operator_id, aircraft_id, seq),
        constraint register_act_id unique (operator_id, id),
        constraint register_act_aircraft foreign key (operator_id, aircraft_id) references aircraft (operator_id, id),
        constraint register_act_person
          foreign key (operator_id, person_id) references membership (operator_id, person_id),
        constraint register_act_entry foreign key (operator_id, entry_id) references record_entry (operator_id, id)
      )`);
    await run.query("call keep_to_operator('register_act')");
    await run.query("call keep_for_ever('register_act')");
    await run.query('grant select, insert on register_act to proviso_app');
    await run.query(`
      alter table left_item
        add column owner_kind text,
        add column owner_until timestamptz(3),
        add column under text,
        add column verified_at timestamptz(3)`);
    await run.query(
      "update left_item set owner_kind = 'modification', version = version + 1 where owned_by is not null",
    );
    await run.query(`
      alter table left_item add constraint left_item_owned_once check (
        (owned_by is null) = (owner_kind is null)
        and (owner_until is null or owned_by is not null)
        and (defect_id is null or owned_by is null)
      )`);
  }

  async down(run: QueryRunner): Promise<void> {
    await run.query('alter table left_item drop constraint left_item_owned_once');
    await run.query(`
      alter table left_item
        drop column owner_kind,
        drop column owner_until,
        drop column under,
        drop column verified_at`);
    await run.query('drop table register_act');
  }
}
