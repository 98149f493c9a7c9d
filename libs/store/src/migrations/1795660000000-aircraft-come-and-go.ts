import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Where an aircraft is based, and that it left the fleet: its history stays, and it is offered nowhere any more. */
export class AircraftComeAndGo1795660000000 implements MigrationInterface {
  async up(run: QueryRunner): Promise<void> {
    await run.query(`
      alter table aircraft
        add column based_at text,
        add column retired_at timestamptz(3),
        add constraint aircraft_based_at foreign key (operator_id, based_at) references station (operator_id, code)`);
  }

  async down(run: QueryRunner): Promise<void> {
    await run.query('alter table aircraft drop column retired_at, drop column based_at');
  }
}
