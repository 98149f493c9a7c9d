import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * That a second person concurs to a deferral before it is signed: for one defect as it stood, on one basis. It is written
 * once; the deferral that stands on it takes the signature into its own act.
 */
export class Concurrences1795606000000 implements MigrationInterface {
  async up(run: QueryRunner): Promise<void> {
    await run.query(`
      create table concurrence (
        operator_id uuid not null,
        id uuid not null,
        defect_id uuid not null,
        defect_version integer not null,
        basis text not null,
        person_id uuid not null,
        signature jsonb not null,
        given_at timestamptz(3) not null,
        entry_id uuid not null,
        primary key (operator_id, id),
        constraint concurrence_defect foreign key (operator_id, defect_id) references defect (operator_id, id),
        constraint concurrence_person
          foreign key (operator_id, person_id) references membership (operator_id, person_id),
        constraint concurrence_entry foreign key (operator_id, entry_id) references record_entry (operator_id, id)
      )`);
    await run.query('create index concurrence_of_defect on concurrence (operator_id, defect_id, given_at)');
    await run.query("call keep_to_operator('concurrence')");
    await run.query('grant select, insert on concurrence to proviso_app');
  }

  async down(run: QueryRunner): Promise<void> {
    await run.query('drop table concurrence');
  }
}
