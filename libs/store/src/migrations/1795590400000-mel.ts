import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Loaded revisions of the MEL, of which one is in force for a type, and the airworthiness directives that bear on it. */
export class Mel1795590400000 implements MigrationInterface {
  async up(run: QueryRunner): Promise<void> {
    await run.query(`
      create table mel_revision (
        operator_id uuid not null constraint mel_revision_operator references operator (id),
        id uuid not null,
        aircraft_type text not null,
        document text not null,
        revision text not null,
        effective_on date not null,
        content text not null,
        sha256 text not null constraint mel_revision_sha256 check (sha256 ~ '^[0-9a-f]{64}$'),
        loaded_by uuid,
        loaded_at timestamptz(3) not null,
        in_force boolean not null default false,
        primary key (operator_id, id),
        constraint mel_revision_once unique (operator_id, aircraft_type, document, revision),
        constraint mel_revision_loaded_by
          foreign key (operator_id, loaded_by) references membership (operator_id, person_id)
      )`);
    await run.query(`
      create unique index mel_revision_in_force on mel_revision (operator_id, aircraft_type) where in_force`);
    await run.query(`
      create table directive (
        operator_id uuid not null constraint directive_operator references operator (id),
        id uuid not null,
        aircraft_type text not null,
        number text not null,
        entry text not null,
        units text[],
        primary key (operator_id, id)
      )`);
    await run.query("call keep_to_operator('mel_revision')");
    await run.query("call keep_to_operator('directive')");
    await run.query(`
      grant select, insert, update (in_force) on mel_revision to proviso_app;
      grant select, insert, delete on directive to proviso_app`);
  }

  async down(run: QueryRunner): Promise<void> {
    await run.query('drop table directive, mel_revision');
  }
}
