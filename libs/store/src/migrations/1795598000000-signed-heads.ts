import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * Heads of the record as they left the house, signed. The owner signs and keeps them; the server's role reads them. It
 * may also see what waits for a number, and which records there are, so that it can check the record whole: a check that
 * sees nothing would otherwise find nothing wrong.
 */
export class SignedHeads1795598000000 implements MigrationInterface {
  async up(run: QueryRunner): Promise<void> {
    await run.query(`
      create table signed_head (
        operator_id uuid not null,
        size bigint not null,
        root text not null constraint signed_head_root check (root ~ '^[0-9a-f]{64}$'),
        signed_at timestamptz(3) not null,
        signature text not null constraint signed_head_signature check (signature ~ '^[0-9a-f]{128}$'),
        public_key text not null constraint signed_head_key check (public_key ~ '^[0-9a-f]{88}$'),
        primary key (operator_id, size),
        constraint signed_head_of_tree foreign key (operator_id, size) references tree_head (operator_id, size)
      )`);
    await run.query("call keep_for_ever('signed_head')");
    await run.query("call keep_to_operator('signed_head')");
    await run.query('grant select on signed_head to proviso_app');
    await run.query(`
      create function recorded_operators() returns table (id uuid, code text)
        language sql stable security definer set search_path = public, pg_temp as
        $$ select o.id, o.code from operator o order by o.code $$;
      create function entries_waiting() returns setof uuid
        language sql stable security definer set search_path = public, pg_temp as
        $$ select entry_id from record_pending
           where operator_id = nullif(current_setting('app.operator', true), '')::uuid $$;
      revoke execute on function recorded_operators, entries_waiting from public;
      grant execute on function recorded_operators, entries_waiting to proviso_app`);
  }

  async down(run: QueryRunner): Promise<void> {
    await run.query('drop function entries_waiting, recorded_operators');
    await run.query('drop table signed_head');
  }
}
