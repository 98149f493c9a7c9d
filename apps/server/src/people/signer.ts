/** Who acts, with what they may do: the signature that goes into an act. */
import {
  type Actor,
  type Authorisation,
  type LicenceCategory,
  type OneOff,
  type Privilege,
  Refusal,
  type Signature,
} from '#deferrals';
import type { Role } from '#mel';
import type { Authorised, Tx } from '#store';
import type { Proof } from './proof.js';

export interface Signing {
  operatorCode: string;
  personId: string;
  role: Role | 'cabin';
  aircraftType: string;
  /** null: any authorisation on the type serves, as it does for a second person of whom the card asks for no other. */
  privilege: Privilege | null;
  /** The defect that is signed for, and the authorisations already used on it; absent for anything else. */
  job?: { defect: string; usedNumbers: readonly string[] };
  statement: string;
  now: string;
  /** How the signer was proved to be that person. */
  proof: Proof;
}

/**
 * The signature of a person under the authorisation that covers the act best. When none covers it, the nearest one is
 * taken, so that the rule that refuses it can say what it does cover.
 */
export async function signatureOf(tx: Tx, signing: Signing): Promise<Signature> {
  const [actor, rows] = await Promise.all([
    actorOf(tx, signing.personId, signing.role),
    tx.people.authorisationsOf(signing.personId),
  ]);
  const member = await tx.people.member(signing.personId);
  const given = await Promise.all(rows.map((row) => authorisationOf(tx, row, signing)));
  const best = given.toSorted((one, other) => fit(other, signing) - fit(one, signing))[0];
  if (!best) throw new Refusal('no-authorisation', { act: signing.privilege ?? 'second person', name: actor.name });
  return {
    ...actor,
    organisation: best.organisation,
    licence: member?.licenceNumber ?? best.number,
    authorisation: best,
    statement: signing.statement,
    signedAt: signing.now,
    ...signing.proof,
  };
}

/** Who acts without signing, with the authorisation that covers it best: a step of a work card. */
export async function authorisedActor(
  tx: Tx,
  acting: Omit<Signing, 'statement' | 'proof'>,
): Promise<{ by: Actor; on: Authorisation }> {
  const by = await actorOf(tx, acting.personId, acting.role);
  const rows = await tx.people.authorisationsOf(acting.personId);
  const given = await Promise.all(rows.map((row) => authorisationOf(tx, row, acting)));
  const on = given.toSorted((one, other) => fit(other, acting) - fit(one, acting))[0];
  if (!on) throw new Refusal('no-authorisation', { act: acting.privilege ?? 'second person', name: by.name });
  return { by: { ...by, organisation: on.organisation }, on };
}

/** A person without a signature: a crew member who writes a defect. */
export async function actorOf(tx: Tx, personId: string, role: Role | 'cabin'): Promise<Actor> {
  const member = await tx.people.member(personId);
  if (!member) throw new Error(`No person ${personId} works for this operator.`);
  return {
    person: member.personId,
    name: member.name,
    role,
    organisation: { name: member.organisationName ?? 'the operator', approval: member.approvalNumber ?? 'none' },
  };
}

async function authorisationOf(
  tx: Tx,
  row: Authorised,
  { operatorCode }: Pick<Signing, 'operatorCode'>,
): Promise<Authorisation> {
  const oneOff = await oneOffOf(tx, row);
  return {
    number: row.number,
    operator: operatorCode,
    person: row.personId,
    organisation: { name: row.organisationName, approval: row.approvalNumber },
    aircraftTypes: row.aircraftTypes,
    licenceCategories: row.licenceCategories as LicenceCategory[],
    privileges: row.privileges as Privilege[],
    validFrom: row.validFrom,
    validUntil: row.validUntil,
    revokedAt: row.revokedAt,
    ...(oneOff === null ? {} : { oneOff }),
  };
}

async function oneOffOf(tx: Tx, row: Authorised): Promise<OneOff | null> {
  const { defectId, issuedBy, issuedAs, because, validFrom } = row;
  if (defectId === null || issuedBy === null || because === null) return null;
  return { defect: defectId, issuedBy: await actorOf(tx, issuedBy, issuedAs as Role), issuedAt: validFrom, because };
}

/** A one-off comes after one that stands for everything, and last of all where it is for another job or was used. */
function fit(
  one: Authorisation,
  { aircraftType, privilege, now, job }: Omit<Signing, 'statement' | 'proof'>,
): number {
  const begun = one.validFrom <= now;
  const over = (one.validUntil !== null && one.validUntil <= now) || (one.revokedAt !== null && one.revokedAt <= now);
  const spent = one.oneOff && (one.oneOff.defect !== job?.defect || job.usedNumbers.includes(one.number));
  return (
    (spent ? -8 : one.oneOff ? -0.5 : 0) +
    (begun && !over ? 4 : 0) +
    (privilege === null || one.privileges.includes(privilege) ? 2 : 0) +
    (one.aircraftTypes.includes(aircraftType) ? 1 : 0)
  );
}
