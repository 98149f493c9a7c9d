import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * What a second person concurred to, whole: units and the document with its limits, not its name alone. One given before
 * this names nothing of that, and is given anew.
 */
export class ConcurredTo1795670000000 implements MigrationInterface {
  async up(run: QueryRunner): Promise<void> {
    await run.query('alter table concurrence add column asked jsonb');
  }

  async down(run: QueryRunner): Promise<void> {
    await run.query('alter table concurrence drop column asked');
  }
}
