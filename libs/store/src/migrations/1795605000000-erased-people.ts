import type { MigrationInterface, QueryRunner } from 'typeorm';

/** By reference, those of this operator's people whose personal data were erased: the salt itself is never shown. */
export class ErasedPeople1795605000000 implements MigrationInterface {
  async up(run: QueryRunner): Promise<void> {
    await run.query(`
      create function erased_people() returns table (reference text)
        language sql stable security definer set search_path = public, pg_temp as $$
          select p.reference from person p join membership m on m.person_id = p.id
          where p.salt is null and m.operator_id = nullif(current_setting('app.operator', true), '')::uuid $$;
      revoke execute on function erased_people from public;
      grant execute on function erased_people to proviso_app`);
  }

  async down(run: QueryRunner): Promise<void> {
    await run.query('drop function erased_people');
  }
}
