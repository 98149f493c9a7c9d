import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Answers kept under the key the client gave, so that a request sent twice is done once. */
export class Idempotency1795590800000 implements MigrationInterface {
  async up(run: QueryRunner): Promise<void> {
    await run.query(`
      create table idempotency (
        operator_id uuid not null,
        person_id uuid not null,
        key text not null,
        fingerprint text not null,
        status integer not null,
        headers jsonb not null default '{}',
        body text not null,
        created_at timestamptz(3) not null default clock_timestamp(),
        primary key (operator_id, person_id, key),
        constraint idempotency_person
          foreign key (operator_id, person_id) references membership (operator_id, person_id)
      )`);
    await run.query('create index idempotency_age on idempotency (operator_id, created_at)');
    await run.query("call keep_to_operator('idempotency')");
    await run.query('grant select, insert, delete on idempotency to proviso_app');
  }

  async down(run: QueryRunner): Promise<void> {
    await run.query('drop table idempotency');
  }
}
