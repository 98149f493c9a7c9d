import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * How a person is let in. Sign-in runs before any operator is known, so three functions of the owner look past
 * row-level security, each for one question and no other. Credentials and sessions are a person's, not an operator's;
 * the owner is let through here (no `force`), for these functions alone.
 */
export class SignIn1795590200000 implements MigrationInterface {
  async up(run: QueryRunner): Promise<void> {
    await run.query(`
      create table credential (
        person_id uuid primary key constraint credential_person references person (id),
        sign_in_name text not null constraint credential_sign_in_name unique,
        hash text not null,
        failed_count integer not null default 0,
        locked_until timestamptz(3)
      )`);
    await run.query(`
      create table session (
        token_hash text primary key constraint session_token_hash check (token_hash ~ '^[0-9a-f]{64}$'),
        id uuid not null constraint session_id unique,
        person_id uuid not null constraint session_person references person (id),
        operator_id uuid,
        created_at timestamptz(3) not null,
        expires_at timestamptz(3) not null,
        constraint session_membership
          foreign key (operator_id, person_id) references membership (operator_id, person_id)
      )`);
    await run.query('create index session_of_person on session (person_id)');
    await run.query(`
      alter table credential enable row level security;
      create policy own on credential
        using (person_id = nullif(current_setting('app.person', true), '')::uuid)
        with check (person_id = nullif(current_setting('app.person', true), '')::uuid);
      create policy entered_by_operator on credential for insert with check (exists (
        select from membership
        where membership.person_id = credential.person_id
          and membership.operator_id = nullif(current_setting('app.operator', true), '')::uuid));
      alter table session enable row level security;
      create policy own on session
        using (person_id = nullif(current_setting('app.person', true), '')::uuid)
        with check (person_id = nullif(current_setting('app.person', true), '')::uuid);
      grant select, insert, update on credential to proviso_app;
      grant select, insert, update, delete on session to proviso_app`);
    await run.query(`
      create policy for_sign_in on membership for select to current_user using (true);
      create policy for_sign_in on operator for select to current_user using (true)`);
    await run.query(`
      create function credential_named(asked text) returns setof credential
        language sql stable security definer set search_path = public, pg_temp as
        $$ select * from credential where sign_in_name = asked $$;
      create function session_of_token(asked text)
        returns table (token_hash text, id uuid, created_at timestamptz, expires_at timestamptz,
          person_id uuid, person_name text, reference text, operator_id uuid, operator_code text,
          operator_name text, roles text[], valid_from timestamptz, valid_until timestamptz)
        language sql stable security definer set search_path = public, pg_temp as $$
          select s.token_hash, s.id, s.created_at, s.expires_at, p.id, p.name, p.reference,
            o.id, o.code, o.name, m.roles, m.valid_from, m.valid_until
          from session s join person p on p.id = s.person_id
          left join operator o on o.id = s.operator_id
          left join membership m on m.operator_id = s.operator_id and m.person_id = s.person_id
          where s.token_hash = asked $$;
      create function memberships_of(asked uuid)
        returns table (operator_id uuid, code text, name text, roles text[],
          valid_from timestamptz, valid_until timestamptz)
        language sql stable security definer set search_path = public, pg_temp as $$
          select o.id, o.code, o.name, m.roles, m.valid_from, m.valid_until
          from membership m join operator o on o.id = m.operator_id
          where m.person_id = asked order by o.code $$;
      revoke execute on function credential_named, session_of_token, memberships_of from public;
      grant execute on function credential_named, session_of_token, memberships_of to proviso_app`);
  }

  async down(run: QueryRunner): Promise<void> {
    await run.query('drop function memberships_of, session_of_token, credential_named');
    await run.query('drop policy for_sign_in on operator; drop policy for_sign_in on membership');
    await run.query('drop table session, credential');
  }
}
