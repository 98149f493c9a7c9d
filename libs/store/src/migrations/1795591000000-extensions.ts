import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Extensions of rectification intervals, from the request to the authority's acknowledgement. */
export class Extensions1795591000000 implements MigrationInterface {
  async up(run: QueryRunner): Promise<void> {
    await run.query(`
      create table extension (
        operator_id uuid not null,
        id uuid not null,
        defect_id uuid not null,
        state text not null
          constraint extension_state check (state in ('asked', 'granted', 'declined', 'withdrawn', 'replaced')),
        asked_by uuid not null,
        asked_role text not null,
        asked_at timestamptz(3) not null,
        reason text not null,
        why_not_fixed text not null,
        plan text not null,
        parts text,
        days integer constraint extension_days_counted check (days > 0),
        agreement text,
        decided_by uuid,
        decided_at timestamptz(3),
        decided_because text,
        act_id uuid,
        last_day_before date,
        last_day date,
        ends_before timestamptz(3),
        ends_at timestamptz(3),
        notice_due_at timestamptz(3),
        sent_by uuid,
        sent_at timestamptz(3),
        sent_reference text,
        acknowledged_by uuid,
        acknowledged_at timestamptz(3),
        acknowledged_reference text,
        version integer not null default 1,
        primary key (operator_id, id),
        constraint extension_acknowledged_once_sent check (acknowledged_at is null or sent_at is not null),
        constraint extension_granted_by_an_act check ((state = 'granted') = (act_id is not null)),
        constraint extension_defect foreign key (operator_id, defect_id) references defect (operator_id, id),
        constraint extension_act foreign key (operator_id, act_id) references defect_act (operator_id, id),
        constraint extension_asked_by foreign key (operator_id, asked_by) references membership (operator_id, person_id),
        constraint extension_decided_by
          foreign key (operator_id, decided_by) references membership (operator_id, person_id),
        constraint extension_sent_by foreign key (operator_id, sent_by) references membership (operator_id, person_id),
        constraint extension_acknowledged_by
          foreign key (operator_id, acknowledged_by) references membership (operator_id, person_id)
      )`);
    await run.query(
      "create unique index extension_open_request on extension (operator_id, defect_id) where state = 'asked'",
    );
    await run.query('create index extension_of_defect on extension (operator_id, defect_id, asked_at)');
    await run.query('create index extension_by_time on extension (operator_id, asked_at)');
    await run.query("call keep_to_operator('extension')");
    await run.query("call keep_versions('extension')");
    await run.query('grant select, insert, update on extension to proviso_app');
  }

  async down(run: QueryRunner): Promise<void> {
    await run.query('drop table extension');
  }
}
