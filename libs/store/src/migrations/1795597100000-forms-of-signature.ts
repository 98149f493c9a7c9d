import type { MigrationInterface, QueryRunner } from 'typeorm';

/** A signature names the form it was given in, and there are no others (published requirement E-17). */
export class FormsOfSignature1795597100000 implements MigrationInterface {
  async up(run: QueryRunner): Promise<void> {
    await run.query(`
      alter table signature add constraint signature_method
        check (method in ('password', 'passkey', 'single-sign-on', 'paper'))`);
  }

  async down(run: QueryRunner): Promise<void> {
    await run.query('alter table signature drop constraint signature_method');
  }
}
