import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * Libraries of work cards, of which one is in force for a type; the revisions of manuals that were recorded; and who
 * confirmed which card against which of them.
 */
export class WorkCards1795595000000 implements MigrationInterface {
  async up(run: QueryRunner): Promise<void> {
    await run.query(`
      create table card_library (
        operator_id uuid not null constraint card_library_operator references operator (id),
        id uuid not null,
        aircraft_type text not null,
        document text not null,
        revision text not null,
        effective_on date not null,
        content text not null,
        sha256 text not null constraint card_library_sha256 check (sha256 ~ '^[0-9a-f]{64}$'),
        loaded_by uuid,
        loaded_at timestamptz(3) not null,
        in_force boolean not null default false,
        primary key (operator_id, id),
        constraint card_library_once unique (operator_id, aircraft_type, document, revision),
        constraint card_library_loaded_by
          foreign key (operator_id, loaded_by) references membership (operator_id, person_id)
      )`);
    await run.query(`
      create unique index card_library_in_force on card_library (operator_id, aircraft_type) where in_force`);
    await run.query(`
      create table manual_revision (
        operator_id uuid not null constraint manual_revision_operator references operator (id),
        id uuid not null,
        manual text not null,
        task text not null,
        revision text not null,
        issued_on date not null,
        recorded_by uuid,
        recorded_at timestamptz(3) not null,
        primary key (operator_id, id),
        constraint manual_revision_once unique (operator_id, manual, task, revision),
        constraint manual_revision_recorded_by
          foreign key (operator_id, recorded_by) references membership (operator_id, person_id)
      )`);
    await run.query(`
      create table card_confirmation (
        operator_id uuid not null constraint card_confirmation_operator references operator (id),
        id uuid not null,
        aircraft_type text not null,
        card text not null,
        wrote text not null,
        against text not null,
        signature jsonb not null,
        entry_id uuid not null,
        primary key (operator_id, id),
        constraint card_confirmation_entry
          foreign key (operator_id, entry_id) references record_entry (operator_id, id)
      )`);
    await run.query('create index card_confirmation_of_card on card_confirmation (operator_id, aircraft_type, card)');
    for (const table of ['card_library', 'manual_revision', 'card_confirmation']) {
      await run.query(`call keep_to_operator('${table}')`);
    }
    await run.query("call keep_for_ever('manual_revision')");
    await run.query("call keep_for_ever('card_confirmation')");
    await run.query(`
      grant select, insert, update (in_force) on card_library to proviso_app;
      grant select, insert on manual_revision to proviso_app;
      grant select, insert on card_confirmation to proviso_app`);
  }

  async down(run: QueryRunner): Promise<void> {
    await run.query('drop table card_confirmation, manual_revision, card_library');
  }
}
