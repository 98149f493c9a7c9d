import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * The server's role, and the procedures by which every later migration puts a table under guard: to one operator
 * (row-level security, forced on the owner too), to versions that go up by one, or to being kept for ever.
 */
export class Guards1795590000000 implements MigrationInterface {
  async up(run: QueryRunner): Promise<void> {
    await run.query(`
      do $$ begin
        if not exists (select from pg_roles where rolname = 'proviso_app') then
          create role proviso_app login nosuperuser nobypassrls;
        end if;
      end $$`);
    await run.query(`
      create procedure keep_to_operator(kept regclass) language plpgsql as $$
      begin
        execute format('alter table %s enable row level security', kept);
        execute format('alter table %s force row level security', kept);
        execute format('create policy of_operator on %s
          using (operator_id = nullif(current_setting(''app.operator'', true), '''')::uuid)
          with check (operator_id = nullif(current_setting(''app.operator'', true), '''')::uuid)', kept);
      end $$`);
    await run.query(`
      create function refuse_stale_version() returns trigger language plpgsql as $$
      begin
        if new.version is distinct from old.version + 1 then
          raise exception 'version % of % cannot follow version %', new.version, tg_table_name, old.version
            using errcode = 'PV001';
        end if;
        return new;
      end $$`);
    await run.query(`
      create procedure keep_versions(kept regclass) language plpgsql as $$
      begin
        execute format('create trigger next_version before update on %s
          for each row execute function refuse_stale_version()', kept);
      end $$`);
    await run.query(`
      create function refuse_change() returns trigger language plpgsql as $$
      begin
        raise exception '% of % is refused: what stands there is kept for ever', tg_op, tg_table_name
          using errcode = 'PV002';
      end $$`);
    await run.query(`
      create procedure keep_for_ever(kept regclass) language plpgsql as $$
      begin
        execute format('create trigger no_change before update or delete on %s
          for each row execute function refuse_change()', kept);
        execute format('create trigger no_truncate before truncate on %s
          for each statement execute function refuse_change()', kept);
      end $$`);
    await run.query(`
      revoke execute on procedure keep_to_operator, keep_versions, keep_for_ever from public`);
  }

  /** The role stays: it may serve other databases of the same server. */
  async down(run: QueryRunner): Promise<void> {
    await run.query('drop procedure keep_for_ever, keep_versions, keep_to_operator');
    await run.query('drop function refuse_change, refuse_stale_version');
  }
}
