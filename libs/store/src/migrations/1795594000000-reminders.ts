import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * Where reminders go, and each reminder: one row for a deferral, a share of what is left, and an address. The row is
 * written with the noticing and is what counts; the job that carries it out only says that there is something to do.
 */
export class Reminders1795594000000 implements MigrationInterface {
  async up(run: QueryRunner): Promise<void> {
    await run.query(`
      create table reminder_address (
        operator_id uuid not null,
        id uuid not null,
        person_id uuid not null,
        for_all boolean not null default false,
        kind text not null constraint reminder_address_kind check (kind in ('email', 'webhook')),
        address text not null,
        label text not null,
        aircraft_id uuid,
        secret text,
        former_secret text,
        former_until timestamptz(3),
        created_at timestamptz(3) not null,
        ended_at timestamptz(3),
        ended_because text,
        version integer not null default 1,
        primary key (operator_id, id),
        constraint reminder_address_signs check ((kind = 'webhook') = (secret is not null)),
        constraint reminder_address_ended check ((ended_at is null) = (ended_because is null)),
        constraint reminder_address_person
          foreign key (operator_id, person_id) references membership (operator_id, person_id),
        constraint reminder_address_aircraft
          foreign key (operator_id, aircraft_id) references aircraft (operator_id, id)
      )`);
    await run.query('create index reminder_address_of_person on reminder_address (operator_id, person_id)');
    await run.query(`
      create table reminder (
        operator_id uuid not null,
        id uuid not null,
        defect_id uuid not null,
        term integer not null constraint reminder_term_counted check (term > 0),
        share integer not null constraint reminder_share_percent check (share between 0 and 100),
        address_id uuid not null,
        content jsonb not null,
        noticed_at timestamptz(3) not null,
        state text not null
          constraint reminder_state check (state in ('waiting', 'sent', 'refused', 'passed over', 'dropped')),
        attempts integer not null default 0,
        next_at timestamptz(3),
        tried_at timestamptz(3),
        problem text,
        sent_at timestamptz(3),
        version integer not null default 1,
        primary key (operator_id, id),
        constraint reminder_once unique (operator_id, defect_id, term, share, address_id),
        constraint reminder_due check ((state = 'waiting') = (next_at is not null)),
        constraint reminder_sent check ((state = 'sent') = (sent_at is not null)),
        constraint reminder_defect foreign key (operator_id, defect_id) references defect (operator_id, id),
        constraint reminder_address foreign key (operator_id, address_id) references reminder_address (operator_id, id)
      )`);
    await run.query("create index reminder_waiting on reminder (operator_id, next_at) where state = 'waiting'");
    await run.query('create index reminder_by_time on reminder (operator_id, noticed_at)');
    for (const table of ['reminder_address', 'reminder']) {
      await run.query(`call keep_to_operator('${table}')`);
      await run.query(`call keep_versions('${table}')`);
    }
    await run.query('grant select, insert, update on reminder_address, reminder to proviso_app');
    await run.query(`
      create function operators_served() returns table (id uuid, code text)
        language sql stable security definer set search_path = public, pg_temp as
        $$ select id, code from operator order by code $$;
      revoke execute on function operators_served from public;
      grant execute on function operators_served to proviso_app`);
  }

  async down(run: QueryRunner): Promise<void> {
    await run.query('drop function operators_served');
    await run.query('drop table reminder, reminder_address');
  }
}
