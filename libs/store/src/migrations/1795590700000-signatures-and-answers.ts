import type { MigrationInterface, QueryRunner } from 'typeorm';

/** What people put their names to, what only a person could judge, and the answers the machine gave. */
export class SignaturesAndAnswers1795590700000 implements MigrationInterface {
  async up(run: QueryRunner): Promise<void> {
    await run.query(`
      create table signature (
        operator_id uuid not null,
        id uuid not null,
        person_id uuid not null,
        statement text not null,
        content_sha256 text not null constraint signature_content_sha256 check (content_sha256 ~ '^[0-9a-f]{64}$'),
        authorisation jsonb not null,
        method text not null,
        evidence text not null,
        signed_at timestamptz(3) not null,
        entry_id uuid not null,
        primary key (operator_id, id),
        constraint signature_person foreign key (operator_id, person_id) references membership (operator_id, person_id),
        constraint signature_entry foreign key (operator_id, entry_id) references record_entry (operator_id, id)
      )`);
    await run.query('create index signature_of_entry on signature (operator_id, entry_id)');
    await run.query(`
      create table judgement (
        operator_id uuid not null,
        id uuid not null,
        aircraft_id uuid not null,
        flight_id uuid,
        judgement text not null,
        accepted boolean not null,
        person_id uuid not null,
        role text not null,
        covers jsonb not null default '{}',
        at timestamptz(3) not null,
        valid_until timestamptz(3),
        entry_id uuid not null,
        primary key (operator_id, id),
        constraint judgement_aircraft foreign key (operator_id, aircraft_id) references aircraft (operator_id, id),
        constraint judgement_flight foreign key (operator_id, flight_id) references flight (operator_id, id),
        constraint judgement_person foreign key (operator_id, person_id) references membership (operator_id, person_id),
        constraint judgement_entry foreign key (operator_id, entry_id) references record_entry (operator_id, id)
      )`);
    await run.query('create index judgement_of_aircraft on judgement (operator_id, aircraft_id, at)');
    await run.query(`
      create table verdict (
        operator_id uuid not null,
        id uuid not null,
        aircraft_id uuid not null,
        flight_id uuid,
        verdict text not null,
        situation_sha256 text not null
          constraint verdict_situation_sha256 check (situation_sha256 ~ '^[0-9a-f]{64}$'),
        answer jsonb not null,
        at timestamptz(3) not null,
        entry_id uuid not null,
        primary key (operator_id, id),
        constraint verdict_aircraft foreign key (operator_id, aircraft_id) references aircraft (operator_id, id),
        constraint verdict_flight foreign key (operator_id, flight_id) references flight (operator_id, id),
        constraint verdict_entry foreign key (operator_id, entry_id) references record_entry (operator_id, id)
      )`);
    await run.query('create index verdict_of_aircraft on verdict (operator_id, aircraft_id, at)');
    for (const table of ['signature', 'judgement', 'verdict']) {
      await run.query(`call keep_to_operator('${table}')`);
      await run.query(`call keep_for_ever('${table}')`);
      await run.query(`grant select, insert on ${table} to proviso_app`);
    }
  }

  async down(run: QueryRunner): Promise<void> {
    await run.query('drop table verdict, judgement, signature');
  }
}
