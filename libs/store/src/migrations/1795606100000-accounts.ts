import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * Accounts that an administrator makes. A first secret is handed over once and opens one thing, the choice of an own one,
 * until it is over. Access may be locked and unlocked: a membership that is locked reads as one that has ended, for
 * everything that lets somebody in, and loses no authorisation.
 */
export class Accounts1795606100000 implements MigrationInterface {
  async up(run: QueryRunner): Promise<void> {
    await run.query('alter table credential add column first_until timestamptz(3)');
    await run.query('alter table membership add column locked_at timestamptz(3)');
    await run.query(functions('least(m.valid_until, m.locked_at)'));
  }

  async down(run: QueryRunner): Promise<void> {
    await run.query(functions('m.valid_until'));
    await run.query('alter table membership drop column locked_at');
    await run.query('alter table credential drop column first_until');
  }
}

/** Written as they were made first, to the last space: going down puts back the very same. */
const functions = (until: string): string => `
  create or replace function session_of_token(asked text)
    returns table (token_hash text, id uuid, created_at timestamptz, expires_at timestamptz,
      person_id uuid, person_name text, reference text, operator_id uuid, operator_code text,
      operator_name text, roles text[], valid_from timestamptz, valid_until timestamptz)
    language sql stable security definer set search_path = public, pg_temp as $$
          select s.token_hash, s.id, s.created_at, s.expires_at, p.id, p.name, p.reference,
            o.id, o.code, o.name, m.roles, m.valid_from, ${until}
          from session s join person p on p.id = s.person_id
          left join operator o on o.id = s.operator_id
          left join membership m on m.operator_id = s.operator_id and m.person_id = s.person_id
          where s.token_hash = asked $$;
  create or replace function memberships_of(asked uuid)
    returns table (operator_id uuid, code text, name text, roles text[],
      valid_from timestamptz, valid_until timestamptz)
    language sql stable security definer set search_path = public, pg_temp as $$
          select o.id, o.code, o.name, m.roles, m.valid_from, ${until}
          from membership m join operator o on o.id = m.operator_id
          where m.person_id = asked order by o.code $$`;
