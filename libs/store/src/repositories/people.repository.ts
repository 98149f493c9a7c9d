import { randomBytes } from 'node:crypto';
import { personReference } from '#record';
import { newId } from '../ids.js';
import { isoText } from '../rows/column.js';
import { AuthorisationTable, type AuthorisationRow } from '../rows/authorisation.row.js';
import type { Fresh } from '../rows/fresh.js';
import { MembershipTable, type MembershipRow } from '../rows/membership.row.js';
import type { OperatorRow } from '../rows/operator.row.js';
import { OrganisationTable, type OrganisationRow } from '../rows/organisation.row.js';
import { PersonTable, type PersonRow } from '../rows/person.row.js';
import type { Transaction } from '../transaction.js';

/** A member with the organisation that sent the person, if any did. */
export type Member = MembershipRow &
  Pick<PersonRow, 'name' | 'licenceNumber' | 'reference'> & {
    organisationName: string | null;
    approvalNumber: string | null;
  };
export type Authorised = AuthorisationRow & { organisationName: string; approvalNumber: string };

const LOCKED = 'select person_id from membership where operator_id = $1 and locked_at is not null';
const AT_STATIONS = 'select person_id from station_cover where operator_id = $1 and ended_at is null';

/** What of one operator binds the personal data of somebody who worked for it. */
export interface Binding extends Pick<OperatorRow, 'settings' | 'base'> {
  validUntil: string | null;
  /** Numbers of open items with an entry of the person. */
  openItems: string[];
  /** When the last item with an entry of the person was closed. */
  lastClosedAt: string | null;
  /** What is held: the person, aircraft and items with an entry of the person. */
  held: string[];
}

/** People as this operator sees them: its members, the organisations they come from, and what they may do. */
export class People {
  private readonly seen = new Map<string, PersonRow>();

  constructor(private readonly tx: Transaction) {}

  /** Enters a person who is nowhere yet. The person is not seen here before having joined. */
  async add(person: { id?: string; name: string; licenceNumber?: string | null }): Promise<{
    id: string;
    reference: string;
  }> {
    const id = person.id ?? newId();
    const salt = randomBytes(32);
    const reference = personReference(salt, id);
    await this.tx.query(
      'insert into person (id, name, licence_number, salt, reference) values ($1, $2, $3, $4, $5)',
      [id, person.name, person.licenceNumber ?? null, salt, reference],
    );
    return { id, reference };
  }

  /** Holds whether somebody works here for the rest of the transaction: of two who let the same person in, one is later. */
  async holdMembership(personId: string): Promise<void> {
    const name = JSON.stringify(['membership', this.tx.operatorId, personId]);
    await this.tx.query('select pg_advisory_xact_lock(hashtextextended($1, 0))', [name]);
    this.tx.forget();
  }

  /** Makes a person a member of this operator. */
  async join(membership: Fresh<MembershipRow>): Promise<void> {
    this.tx.forget();
    await this.tx.manager.insert(MembershipTable, { ...membership, operatorId: this.tx.operatorId });
    this.tx.wrote(MembershipTable, membership.personId);
  }

  /**
   * The hash, never the secret. A credential is entered once; afterwards only its owner changes it.
   * @param firstUntil until when it serves to choose an own secret and for nothing else; null for one that is the own
   */
  async giveCredential(
    personId: string,
    signInName: string,
    hash: string,
    firstUntil: string | null = null,
  ): Promise<void> {
    await this.tx.query(
      'insert into credential (person_id, sign_in_name, hash, first_until) values ($1, $2, $3, $4)',
      [personId, signInName, hash, firstUntil],
    );
  }

  get(id: string): Promise<PersonRow | null> {
    return this.tx.manager.findOneBy(PersonTable, { id });
  }

  /** @throws Error when no member of this operator has this id */
  async referenceOf(id: string): Promise<string> {
    const person = await this.get(id);
    if (!person) throw new Error(`No person ${id} works for this operator.`);
    return person.reference;
  }

  /** Names for the references that stand in the record; one that was erased is missing. */
  async namesOf(references: readonly string[]): Promise<Map<string, string>> {
    const rows = await this.tx.query<{ reference: string; name: string }>(
      'select reference, name from person where reference = any($1)',
      [references],
    );
    return new Map(rows.map(({ reference, name }) => [reference, name]));
  }

  /** The people behind references, with their licence numbers; one that was erased is missing. */
  async behind(references: readonly string[]): Promise<Map<string, PersonRow>> {
    const rows = await this.tx.query<PersonRow>(
      'select id, name, licence_number as "licenceNumber", reference from person where reference = any($1)',
      [references],
    );
    return new Map(rows.map((person) => [person.reference, person]));
  }

  /** Name, licence and reference of each of these people that this operator may see; one that was erased is missing. */
  async known(ids: readonly string[]): Promise<Map<string, PersonRow>> {
    const missing = ids.filter((id) => !this.seen.has(id));
    if (missing.length > 0) {
      const rows = await this.tx.query<PersonRow>(
        'select id, name, licence_number as "licenceNumber", reference from person where id = any($1)',
        [missing],
      );
      for (const person of rows) this.seen.set(person.id, person);
    }
    return new Map(ids.flatMap((id) => [this.seen.get(id) ?? []].flat().map((person) => [id, person] as const)));
  }

  /** The people who are said to be at a station. */
  atStations(): Promise<Map<string, PersonRow>> {
    return this.tx.remembered('people at stations', async () => {
      const rows = await this.tx.query<PersonRow>(
        `select id, name, licence_number as "licenceNumber", reference from person where id in (${AT_STATIONS})`,
        [this.tx.operatorId],
      );
      return new Map(rows.map((person) => [person.id, person]));
    });
  }

  /** What of each operator binds a person's data; the database shows it of own people alone. */
  async bindingOf(id: string): Promise<Binding[]> {
    const rows = await this.tx.query<
      Omit<Binding, 'validUntil' | 'lastClosedAt'> & { validUntil: Date | null; lastClosedAt: Date | null }
    >(
      `select valid_until as "validUntil", settings, base, open_items as "openItems", last_closed_at as "lastClosedAt",
         held from binding_of_person($1)`,
      [id],
    );
    return rows.map(({ validUntil, lastClosedAt, ...row }) => ({
      ...row,
      validUntil: isoText(validUntil),
      lastClosedAt: isoText(lastClosedAt),
    }));
  }

  /**
   * Destroys name, licence number, salt and every means to sign in, and lists that it was done. What was signed stays.
   * @param by reference of whoever signs it; null where the program does it by itself
   * @returns false when it was done before, or when the person still works for an operator
   */
  async erase(id: string, at: string, by: string | null): Promise<boolean> {
    this.tx.forget();
    this.seen.delete(id);
    const [row] = await this.tx.query<{ erased: boolean }>('select erase_and_list($1, $2, $3) as erased', [
      id,
      at,
      by,
    ]);
    return row?.erased === true;
  }

  /** References of those whose personal data were erased. */
  async erasedOnes(): Promise<Set<string>> {
    const rows = await this.tx.query<{ reference: string }>('select reference from erased_people()');
    return new Set(rows.map(({ reference }) => reference));
  }

  member(personId: string): Promise<Member | null> {
    return this.tx.remembered(`member ${personId}`, async () => {
      const [member] = await this.select(personId);
      if (member === undefined) return null;
      const { name, licenceNumber, reference } = member;
      this.seen.set(personId, { id: personId, name, licenceNumber, reference });
      return member;
    });
  }

  members(): Promise<Member[]> {
    return this.select(null);
  }

  /** @throws StaleVersion */
  changeMembership(personId: string, seen: number, changes: Partial<MembershipRow>): Promise<void> {
    this.tx.forget();
    return this.tx.change(MembershipTable, personId, seen, changes, 'personId');
  }

  addOrganisation(organisation: Fresh<OrganisationRow>): Promise<string> {
    this.tx.forget();
    return this.tx.insert(OrganisationTable, organisation);
  }

  organisations(): Promise<OrganisationRow[]> {
    const { operatorId, manager } = this.tx;
    return this.tx.remembered('organisations', () =>
      manager.find(OrganisationTable, { where: { operatorId }, order: { name: 'ASC' } }),
    );
  }

  authorise(authorisation: Fresh<AuthorisationRow>): Promise<string> {
    this.tx.forget();
    return this.tx.insert(AuthorisationTable, authorisation);
  }

  /** All that were ever given, valid or not: whether one covers an act is for the domain to say. */
  authorisationsOf(personId: string): Promise<Authorised[]> {
    return this.tx.remembered(`authorisations of ${personId}`, () => this.authorised('a.person_id = $2', [personId]));
  }

  /** The same of everybody who is said to be at a station; who is locked out signs nothing there. */
  authorisationsAtStations(): Promise<Authorised[]> {
    return this.tx.remembered('authorisations at stations', () =>
      this.authorised(`a.person_id in (${AT_STATIONS} except ${LOCKED})`),
    );
  }

  private async authorised(where: string, values: readonly unknown[] = []): Promise<Authorised[]> {
    const rows = await this.tx.query<
      Omit<Authorised, 'validFrom' | 'validUntil' | 'revokedAt'> & {
        validFrom: Date;
        validUntil: Date | null;
        revokedAt: Date | null;
      }
    >(
      `select a.operator_id as "operatorId", a.id, a.person_id as "personId", a.organisation_id as "organisationId",
         a.number, a.aircraft_types as "aircraftTypes", a.licence_categories as "licenceCategories", a.privileges,
         a.valid_from as "validFrom", a.valid_until as "validUntil", a.revoked_at as "revokedAt", a.version,
         a.defect_id as "defectId", a.issued_by as "issuedBy", a.issued_as as "issuedAs", a.because,
         o.name as "organisationName", o.approval_number as "approvalNumber"
       from authorisation a
       join organisation o on o.operator_id = a.operator_id and o.id = a.organisation_id
       where a.operator_id = $1 and ${where} order by a.number`,
      [this.tx.operatorId, ...values],
    );
    return rows.map((row) => ({
      ...row,
      validFrom: isoText(row.validFrom) as string,
      validUntil: isoText(row.validUntil),
      revokedAt: isoText(row.revokedAt),
    }));
  }

  /** How many one-off authorisations were issued for a defect. */
  async oneOffsFor(defectId: string): Promise<number> {
    const [row] = await this.tx.query<{ n: number }>(
      'select count(*)::int as n from authorisation where operator_id = $1 and defect_id = $2',
      [this.tx.operatorId, defectId],
    );
    return row?.n ?? 0;
  }

  /** Whether an organisation ever gave this number for this operator. */
  async numberTaken(organisationId: string, number: string): Promise<boolean> {
    const { operatorId, manager } = this.tx;
    return manager.existsBy(AuthorisationTable, { operatorId, organisationId, number });
  }

  /** @throws StaleVersion */
  revoke(authorisationId: string, seen: number, revokedAt: string): Promise<void> {
    this.tx.forget();
    return this.tx.change(AuthorisationTable, authorisationId, seen, { revokedAt });
  }

  private async select(personId: string | null): Promise<Member[]> {
    const rows = await this.tx.query<
      Omit<Member, 'validFrom' | 'validUntil' | 'lockedAt'> & {
        validFrom: Date;
        validUntil: Date | null;
        lockedAt: Date | null;
      }
    >(
      `select m.operator_id as "operatorId", m.person_id as "personId", m.organisation_id as "organisationId", m.roles,
         m.valid_from as "validFrom", m.valid_until as "validUntil", m.locked_at as "lockedAt", m.version,
         p.name, p.licence_number as "licenceNumber", p.reference,
         o.name as "organisationName", o.approval_number as "approvalNumber"
       from membership m
       join person p on p.id = m.person_id
       left join organisation o on o.operator_id = m.operator_id and o.id = m.organisation_id
       where m.operator_id = $1 and ($2::uuid is null or m.person_id = $2) order by p.name`,
      [this.tx.operatorId, personId],
    );
    return rows.map((row) => ({
      ...row,
      validFrom: isoText(row.validFrom) as string,
      validUntil: isoText(row.validUntil),
      lockedAt: isoText(row.lockedAt),
    }));
  }
}
