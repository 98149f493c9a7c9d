import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * Nothing is sent to a mailbox before somebody who reads it has told the code that was sent there. Addresses that were in
 * use before count as confirmed: by a default, since nobody is shown the rows of every operator.
 */
export class ConfirmedMailboxes1795603000000 implements MigrationInterface {
  async up(run: QueryRunner): Promise<void> {
    await run.query(`
      alter table reminder_address
        add column confirmed_at timestamptz(3) default now(),
        add column code_hash text,
        add column code_sent_at timestamptz(3),
        add column code_problem text,
        add column code_tries integer not null default 0,
        add column codes_asked integer not null default 0,
        add constraint reminder_address_code check ((code_hash is null) = (code_sent_at is null))`);
    await run.query('alter table reminder_address alter column confirmed_at drop default');
  }

  async down(run: QueryRunner): Promise<void> {
    await run.query(`
      alter table reminder_address drop column confirmed_at, drop column code_hash, drop column code_sent_at,
        drop column code_problem, drop column code_tries, drop column codes_asked`);
  }
}
