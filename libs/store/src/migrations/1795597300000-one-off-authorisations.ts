import type { MigrationInterface, QueryRunner } from 'typeorm';

/** An authorisation for one job: which defect, who issued it in which role, and why. */
export class OneOffAuthorisations1795597300000 implements MigrationInterface {
  async up(run: QueryRunner): Promise<void> {
    await run.query(`
      alter table authorisation
        add column defect_id uuid,
        add column issued_by uuid,
        add column issued_as text,
        add column because text,
        add constraint authorisation_one_off check (num_nulls(defect_id, issued_by, issued_as, because) in (0, 4)
          and (defect_id is null or valid_until is not null)),
        add constraint authorisation_defect foreign key (operator_id, defect_id) references defect (operator_id, id),
        add constraint authorisation_issued_by
          foreign key (operator_id, issued_by) references membership (operator_id, person_id)`);
  }

  async down(run: QueryRunner): Promise<void> {
    await run.query(`
      alter table authorisation
        drop constraint authorisation_issued_by,
        drop constraint authorisation_defect,
        drop constraint authorisation_one_off,
        drop column because,
        drop column issued_as,
        drop column issued_by,
        drop column defect_id`);
  }
}
