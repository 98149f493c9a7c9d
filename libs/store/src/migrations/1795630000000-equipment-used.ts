import type { MigrationInterface, QueryRunner } from 'typeorm';

/** The equipment used last is offered at the next step of a work card, and found without reading every act. */
export class EquipmentUsed1795630000000 implements MigrationInterface {
  async up(run: QueryRunner): Promise<void> {
    await run.query(`create index defect_act_equipment on defect_act (operator_id, at)
      where payload -> 'used' is not null`);
  }

  async down(run: QueryRunner): Promise<void> {
    await run.query('drop index defect_act_equipment');
  }
}
