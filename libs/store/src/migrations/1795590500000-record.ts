import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * The record. An entry is written with the change it tells of; it waits in record_pending under the number of its
 * transaction, until the sealer gives it the next number of its operator and appends its leaf to that operator's tree.
 * The server's role writes entries and reads the rest; numbers and heads are the sealer's, which works as the owner.
 */
export class Record1795590500000 implements MigrationInterface {
  async up(run: QueryRunner): Promise<void> {
    await run.query(`
      create table record_entry (
        operator_id uuid not null constraint record_entry_operator references operator (id),
        id uuid not null,
        seq bigint not null generated always as identity,
        aircraft_id uuid,
        who text,
        what text not null,
        entered_at timestamptz(3) not null,
        canonical bytea not null,
        leaf bytea not null,
        primary key (operator_id, id),
        constraint record_entry_leaf check (leaf = sha256('\\x00'::bytea || canonical)),
        constraint record_entry_aircraft
          foreign key (operator_id, aircraft_id) references aircraft (operator_id, id)
      )`);
    await run.query('create index record_entry_of_aircraft on record_entry (operator_id, aircraft_id, seq)');
    await run.query(`
      create table record_pending (
        seq bigint primary key,
        operator_id uuid not null,
        entry_id uuid not null,
        leaf bytea not null,
        written_in xid8 not null default pg_current_xact_id(),
        constraint record_pending_entry foreign key (operator_id, entry_id) references record_entry (operator_id, id)
      )`);
    await run.query(`
      create table record_sealed (
        operator_id uuid not null,
        number bigint not null constraint record_sealed_number check (number > 0),
        entry_id uuid not null,
        leaf bytea not null,
        sealed_at timestamptz(3) not null default clock_timestamp(),
        primary key (operator_id, number),
        constraint record_sealed_once unique (operator_id, entry_id),
        constraint record_sealed_entry foreign key (operator_id, entry_id) references record_entry (operator_id, id)
      )`);
    await run.query(`
      create table tree_head (
        operator_id uuid not null constraint tree_head_operator references operator (id),
        size bigint not null,
        root text not null constraint tree_head_root check (root ~ '^[0-9a-f]{64}$'),
        made_at timestamptz(3) not null default clock_timestamp(),
        primary key (operator_id, size)
      )`);
    await run.query(`
      create table tree_frontier (
        operator_id uuid primary key constraint tree_frontier_operator references operator (id),
        size bigint not null,
        hashes text[] not null
      )`);
    await run.query(`
      create function await_sealing() returns trigger
        language plpgsql security definer set search_path = public, pg_temp as $$
      begin
        insert into record_pending (seq, operator_id, entry_id, leaf)
          values (new.seq, new.operator_id, new.id, new.leaf);
        return null;
      end $$`);
    await run.query(`
      create trigger await_sealing after insert on record_entry for each row execute function await_sealing()`);
    for (const table of ['record_entry', 'record_sealed', 'tree_head'])
      await run.query(`call keep_for_ever('${table}')`);
    for (const table of ['record_entry', 'record_pending', 'record_sealed', 'tree_head', 'tree_frontier'])
      await run.query(`call keep_to_operator('${table}')`);
    await run.query('create policy for_sealer on record_pending to current_user using (true)');
    await run.query(`
      grant select, insert on record_entry to proviso_app;
      grant select on record_sealed, tree_head to proviso_app`);
  }

  async down(run: QueryRunner): Promise<void> {
    await run.query('drop table tree_frontier, tree_head, record_sealed, record_pending, record_entry');
    await run.query('drop function await_sealing');
  }
}
