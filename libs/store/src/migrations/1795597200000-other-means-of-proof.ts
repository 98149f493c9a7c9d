import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * Other ways than a secret to prove to be a person: passkeys, and an account at a sign-on of somebody else, linked by
 * issuer and subject alone. A challenge is one attempt at such a proof: it is taken once, whatever comes of it. Nobody is
 * known before a sign-in succeeds, so challenges and look-ups go through functions of the owner, each for one question.
 */
export class OtherMeansOfProof1795597200000 implements MigrationInterface {
  async up(run: QueryRunner): Promise<void> {
    await run.query(`
      create table passkey (
        id text primary key,
        person_id uuid not null constraint passkey_person references person (id),
        public_key bytea not null,
        counter bigint not null,
        transports text[] not null default '{}',
        label text not null,
        created_at timestamptz(3) not null,
        last_used_at timestamptz(3)
      )`);
    await run.query('create index passkey_of_person on passkey (person_id)');
    await run.query(`
      create table sign_on_identity (
        issuer text not null,
        subject text not null,
        person_id uuid not null constraint sign_on_identity_person references person (id),
        linked_at timestamptz(3) not null,
        primary key (issuer, subject)
      )`);
    await run.query('create index sign_on_identity_of_person on sign_on_identity (person_id)');
    await run.query(`
      create table challenge (
        id uuid primary key,
        kind text not null,
        person_id uuid constraint challenge_person references person (id),
        session_id uuid,
        secrets jsonb not null,
        statement_sha256 text,
        created_at timestamptz(3) not null,
        expires_at timestamptz(3) not null
      )`);
    await run.query('create index challenge_age on challenge (expires_at)');
    await run.query('alter table challenge enable row level security');
    for (const table of ['passkey', 'sign_on_identity']) {
      await run.query(`
        alter table ${table} enable row level security;
        create policy own on ${table}
          using (person_id = nullif(current_setting('app.person', true), '')::uuid)
          with check (person_id = nullif(current_setting('app.person', true), '')::uuid)`);
    }
    await run.query(`
      grant select, insert, delete, update (counter, last_used_at) on passkey to proviso_app;
      grant select, insert, delete on sign_on_identity to proviso_app`);
    await run.query(`
      create function passkey_named(asked text) returns setof passkey
        language sql stable security definer set search_path = public, pg_temp as
        $$ select * from passkey where id = asked $$;
      create function person_signed_on(asked_issuer text, asked_subject text) returns uuid
        language sql stable security definer set search_path = public, pg_temp as
        $$ select person_id from sign_on_identity where issuer = asked_issuer and subject = asked_subject $$;
      create function keep_challenge(kept challenge) returns void
        language sql volatile security definer set search_path = public, pg_temp as $$
          delete from challenge where id in (
            select id from challenge where expires_at <= kept.created_at order by expires_at limit 2
            for update skip locked);
          insert into challenge select kept.* $$;
      create function take_challenge(asked uuid, asked_at timestamptz) returns setof challenge
        language sql volatile security definer set search_path = public, pg_temp as $$
          with taken as (delete from challenge where id = asked returning *)
          select * from taken where expires_at > asked_at $$;
      revoke execute on function passkey_named, person_signed_on, keep_challenge, take_challenge from public;
      grant execute on function passkey_named, person_signed_on, keep_challenge, take_challenge to proviso_app`);
  }

  async down(run: QueryRunner): Promise<void> {
    await run.query('drop function take_challenge, keep_challenge, person_signed_on, passkey_named');
    await run.query('drop table challenge, sign_on_identity, passkey');
  }
}
