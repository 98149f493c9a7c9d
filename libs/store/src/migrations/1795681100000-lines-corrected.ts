import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * A line of the register that belongs to no defect kept its first words after it was corrected: the history read
 * otherwise, and the list did not. Each correction is carried out in its order.
 */
export class LinesCorrected1795681100000 implements MigrationInterface {
  async up(run: QueryRunner): Promise<void> {
    await run.query(`
      do $$
      declare
        one record; said jsonb;
      begin
        for one in select id from recorded_operators() loop
          perform set_config('app.operator', one.id::text, true);
          for said in
            select asked.payload from register_act made
            join register_act asked
              on asked.operator_id = made.operator_id and asked.id::text = made.payload ->> 'asked'
            where made.operator_id = one.id and made.kind = 'thing-corrected' order by made.at, made.seq
          loop
            update left_item
            set place = case when said ->> 'field' = 'where' then said ->> 'now' else place end,
              tag = case when said ->> 'field' = 'tag' then said ->> 'now' else tag end, version = version + 1
            where operator_id = one.id and id = (said ->> 'item')::uuid
              and said ->> 'was' = case when said ->> 'field' = 'where' then place else tag end;
          end loop;
        end loop;
        perform set_config('app.operator', '', true);
      end $$`);
  }

  /** What stands in the list is true before and after; the columns are the same. */
  async down(): Promise<void> {}
}
