import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * An invitation to work for one more operator: whoever holds its code and signs in with an account of their own takes it
 * up. The operator that invites learns nothing of who has an account here, nor where else that person works.
 */
export class Invitations1795660010000 implements MigrationInterface {
  async up(run: QueryRunner): Promise<void> {
    await run.query(`
      create table invitation (
        operator_id uuid not null constraint invitation_operator references operator (id),
        id uuid not null,
        code_hash text not null constraint invitation_code unique,
        roles text[] not null,
        organisation_id uuid,
        invited_by uuid not null,
        invited_at timestamptz(3) not null,
        until_at timestamptz(3) not null,
        taken_up_by uuid,
        taken_up_at timestamptz(3),
        withdrawn_at timestamptz(3),
        version integer not null default 1,
        primary key (operator_id, id),
        constraint invitation_organisation
          foreign key (operator_id, organisation_id) references organisation (operator_id, id),
        constraint invitation_invited_by
          foreign key (operator_id, invited_by) references membership (operator_id, person_id),
        constraint invitation_taken_up_by
          foreign key (operator_id, taken_up_by) references membership (operator_id, person_id),
        constraint invitation_taken_up check ((taken_up_by is null) = (taken_up_at is null))
      )`);
    await run.query("call keep_to_operator('invitation')");
    await run.query("call keep_versions('invitation')");
    await run.query('grant select, insert, update on invitation to proviso_app');
  }

  async down(run: QueryRunner): Promise<void> {
    await run.query('drop table invitation');
  }
}
