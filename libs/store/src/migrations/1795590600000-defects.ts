import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * Defects and what became of them. The acts are the truth and are kept for ever; the columns of `defect` are what they
 * add up to, kept so that a list can be asked for.
 */
export class Defects1795590600000 implements MigrationInterface {
  async up(run: QueryRunner): Promise<void> {
    await run.query(`
      create table defect (
        operator_id uuid not null,
        id uuid not null,
        aircraft_id uuid not null,
        number integer not null constraint defect_number_counted check (number > 0),
        description text not null,
        raised_by uuid,
        log_page text,
        occurred_at timestamptz(3),
        recorded_at timestamptz(3) not null,
        entered_at timestamptz(3) not null,
        late_reason text,
        entry text,
        units text[] not null default '{}',
        sub_entry text,
        mel_row text,
        mel_revision_id uuid,
        signed boolean not null default false,
        basis jsonb,
        state text not null,
        last_day date,
        ends_at timestamptz(3),
        tzdb text,
        closed_at timestamptz(3),
        version integer not null default 1,
        primary key (operator_id, id),
        constraint defect_number unique (operator_id, aircraft_id, number),
        constraint defect_aircraft foreign key (operator_id, aircraft_id) references aircraft (operator_id, id),
        constraint defect_raised_by foreign key (operator_id, raised_by) references membership (operator_id, person_id),
        constraint defect_mel_revision
          foreign key (operator_id, mel_revision_id) references mel_revision (operator_id, id)
      )`);
    await run.query('create index defect_open on defect (operator_id, aircraft_id) where closed_at is null');
    await run.query(`
      create table defect_act (
        operator_id uuid not null,
        defect_id uuid not null,
        seq integer not null,
        id uuid not null,
        kind text not null,
        at timestamptz(3) not null,
        person_id uuid,
        payload jsonb not null,
        entry_id uuid not null,
        primary key (operator_id, defect_id, seq),
        constraint defect_act_id unique (operator_id, id),
        constraint defect_act_defect foreign key (operator_id, defect_id) references defect (operator_id, id),
        constraint defect_act_person foreign key (operator_id, person_id) references membership (operator_id, person_id),
        constraint defect_act_entry foreign key (operator_id, entry_id) references record_entry (operator_id, id)
      )`);
    await run.query(`
      create table left_item (
        operator_id uuid not null,
        id uuid not null,
        aircraft_id uuid not null,
        defect_id uuid,
        kind text not null,
        place text not null,
        tag text,
        undo text not null,
        owned_by text,
        fitted_by uuid not null,
        fitted_at timestamptz(3) not null,
        removed_by uuid,
        removed_at timestamptz(3),
        verified_by uuid,
        version integer not null default 1,
        primary key (operator_id, id),
        constraint left_item_aircraft foreign key (operator_id, aircraft_id) references aircraft (operator_id, id),
        constraint left_item_defect foreign key (operator_id, defect_id) references defect (operator_id, id),
        constraint left_item_fitted_by
          foreign key (operator_id, fitted_by) references membership (operator_id, person_id),
        constraint left_item_removed_by
          foreign key (operator_id, removed_by) references membership (operator_id, person_id),
        constraint left_item_verified_by
          foreign key (operator_id, verified_by) references membership (operator_id, person_id)
      )`);
    await run.query('create index left_item_of_aircraft on left_item (operator_id, aircraft_id)');
    await run.query("call keep_to_operator('defect')");
    await run.query("call keep_to_operator('defect_act')");
    await run.query("call keep_to_operator('left_item')");
    await run.query("call keep_versions('defect')");
    await run.query("call keep_versions('left_item')");
    await run.query("call keep_for_ever('defect_act')");
    await run.query(`
      grant select, insert, update on defect, left_item to proviso_app;
      grant select, insert on defect_act to proviso_app`);
  }

  async down(run: QueryRunner): Promise<void> {
    await run.query('drop table left_item, defect_act, defect');
  }
}
