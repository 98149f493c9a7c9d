import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Files of movement messages out of a watched folder: each content is taken in once, whatever it is called. */
export class MovementFiles1795594200000 implements MigrationInterface {
  async up(run: QueryRunner): Promise<void> {
    await run.query(`
      create table movement_file (
        operator_id uuid not null constraint movement_file_operator references operator (id),
        id uuid not null,
        sha256 text not null constraint movement_file_sha256 check (sha256 ~ '^[0-9a-f]{64}$'),
        name text not null,
        bytes integer not null,
        taken_at timestamptz(3) not null,
        delivery_id uuid,
        refused_because text,
        primary key (operator_id, id),
        constraint movement_file_once unique (operator_id, sha256),
        constraint movement_file_delivery
          foreign key (operator_id, delivery_id) references movement_delivery (operator_id, id)
      )`);
    await run.query("call keep_to_operator('movement_file')");
    await run.query("call keep_for_ever('movement_file')");
    await run.query('grant select, insert on movement_file to proviso_app');
    await run.query(`
      alter table movement_delivery drop constraint movement_delivery_came_by,
        add constraint movement_delivery_came_by check (came_by in ('text', 'json', 'mended', 'file'))`);
  }

  async down(run: QueryRunner): Promise<void> {
    await run.query(`
      alter table movement_delivery drop constraint movement_delivery_came_by,
        add constraint movement_delivery_came_by check (came_by in ('text', 'json', 'mended'))`);
    await run.query('drop table movement_file');
  }
}
