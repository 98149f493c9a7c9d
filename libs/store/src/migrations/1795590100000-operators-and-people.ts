import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * Operators, the organisations that work for them, and people. A person is one identity everywhere and works for an
 * operator by a membership; a table of an operator points at people only through it.
 */
export class OperatorsAndPeople1795590100000 implements MigrationInterface {
  async up(run: QueryRunner): Promise<void> {
    await run.query(`
      create table operator (
        id uuid primary key,
        code text not null constraint operator_code unique,
        name text not null,
        invented boolean not null default false,
        base text not null,
        settings jsonb not null default '{}',
        version integer not null default 1
      )`);
    await run.query(`
      create table organisation (
        operator_id uuid not null constraint organisation_operator references operator (id),
        id uuid not null,
        name text not null,
        approval_number text not null,
        primary key (operator_id, id),
        constraint organisation_approval unique (operator_id, approval_number)
      )`);
    await run.query(`
      create table person (
        id uuid primary key,
        name text not null,
        licence_number text,
        salt bytea not null constraint person_salt check (length(salt) >= 16),
        reference text not null constraint person_reference unique
      )`);
    await run.query(`
      create table membership (
        operator_id uuid not null constraint membership_operator references operator (id),
        person_id uuid not null constraint membership_person references person (id),
        organisation_id uuid,
        roles text[] not null,
        valid_from timestamptz(3) not null,
        valid_until timestamptz(3),
        version integer not null default 1,
        primary key (operator_id, person_id),
        constraint membership_organisation
          foreign key (operator_id, organisation_id) references organisation (operator_id, id)
      )`);
    await run.query('create index membership_of_person on membership (person_id)');
    await run.query(`
      create table authorisation (
        operator_id uuid not null,
        id uuid not null,
        person_id uuid not null,
        organisation_id uuid not null,
        number text not null,
        aircraft_types text[] not null,
        licence_categories text[] not null,
        privileges text[] not null,
        valid_from timestamptz(3) not null,
        valid_until timestamptz(3),
        revoked_at timestamptz(3),
        version integer not null default 1,
        primary key (operator_id, id),
        constraint authorisation_number unique (operator_id, organisation_id, number),
        constraint authorisation_membership
          foreign key (operator_id, person_id) references membership (operator_id, person_id),
        constraint authorisation_organisation
          foreign key (operator_id, organisation_id) references organisation (operator_id, id)
      )`);
    await run.query('create index authorisation_of_person on authorisation (operator_id, person_id)');
    await run.query("call keep_to_operator('organisation')");
    await run.query("call keep_to_operator('membership')");
    await run.query("call keep_to_operator('authorisation')");
    await run.query("call keep_versions('operator')");
    await run.query("call keep_versions('membership')");
    await run.query("call keep_versions('authorisation')");
    await run.query(`
      alter table operator enable row level security;
      alter table operator force row level security;
      create policy of_operator on operator
        using (id = nullif(current_setting('app.operator', true), '')::uuid)
        with check (id = nullif(current_setting('app.operator', true), '')::uuid)`);
    await run.query(`
      alter table person enable row level security;
      create policy seen_by_operator on person for select using (exists (
        select from membership
        where membership.person_id = person.id
          and membership.operator_id = nullif(current_setting('app.operator', true), '')::uuid));
      create policy seen_by_self on person for select
        using (id = nullif(current_setting('app.person', true), '')::uuid);
      create policy entered on person for insert with check (true)`);
    await run.query(`
      grant select, update on operator to proviso_app;
      grant select, insert on organisation to proviso_app;
      grant select, insert, update on membership, authorisation to proviso_app;
      grant select (id, name, licence_number, reference), insert on person to proviso_app`);
  }

  async down(run: QueryRunner): Promise<void> {
    await run.query('drop table authorisation, membership, person, organisation, operator');
  }
}
