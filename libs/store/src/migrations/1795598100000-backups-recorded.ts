import type { MigrationInterface, QueryRunner } from 'typeorm';

/** That a backup was made stands in the record; the newest such entry is found without reading all of it. */
export class BackupsRecorded1795598100000 implements MigrationInterface {
  async up(run: QueryRunner): Promise<void> {
    await run.query(
      "create index record_entry_backups on record_entry (operator_id, seq) where what = 'backup.made'",
    );
  }

  async down(run: QueryRunner): Promise<void> {
    await run.query('drop index record_entry_backups');
  }
}
