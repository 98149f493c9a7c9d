/**
 * A new operator and its first administrator, made beside the server by whoever holds the database: all of it or nothing.
 * That it was made, and by what, are the first entries of its record.
 */
import { baseZone, IntervalInputError } from '#intervals';
import { createOperator, listOperators, type OperatorRow, type Tx } from '#store';
import { firstSecret, type FirstSecret, isNameTaken } from '../people/first-secret.js';
import { PRESET_CHOICES } from '../settings/setting.js';

export interface Administrator {
  name: string;
  signInName: string;
  licence: string | null;
}

export interface Opening {
  code: string;
  name: string;
  base: string;
  preset: string;
  /** Number of its own approval; null makes no organisation yet. */
  approval: string | null;
  administrator: Administrator;
}

/** What was asked for cannot be; nothing was made. */
export class OpeningRefused extends Error {
  constructor(
    readonly field: keyof Opening | keyof Administrator,
    reason: string,
  ) {
    super(reason);
  }
}

export interface Opened extends Omit<FirstSecret, 'hash'> {
  operator: Pick<OperatorRow, 'id' | 'code' | 'name' | 'base'> & { preset: string };
}

const CODE = /^[A-Z0-9]{2,8}$/;
const MOST = { name: 120, approval: 60, signInName: 80, licence: 60 } as const;

/** @throws OpeningRefused */
export async function openOperator(ownerUrl: string, asked: Opening, now: string): Promise<Opened> {
  const { code, name, preset } = asked;
  const base = checked(asked);
  const known = (await listOperators(ownerUrl)).find((one) => one.code === code);
  if (known) throw new OpeningRefused('code', `is there already: ${known.name}, base ${known.base}`);
  const { secret, hash, until } = await firstSecret(now);
  // Days in UTC are what every preset says; another base is the operator's own, with its reason.
  const own =
    base === 'UTC' ? {} : { timeBase: base, reasons: { timeBase: 'The base that the operator was made with.' } };
  const operator = { code, name, invented: false, base, settings: { preset, ...own } };
  const id = await createOperator(ownerUrl, operator, async (tx) => {
    await record(tx, 'operator.made', { code, name, base, preset, by: BY_COMMAND }, now);
    await addAdministrator(tx, asked, hash, until, now);
  }).catch((error: unknown) => {
    if (isNameTaken(error)) throw taken(asked.administrator.signInName);
    if (error instanceof Error && 'constraint' in error && error.constraint === 'operator_code') {
      throw new OpeningRefused('code', 'is there already');
    }
    throw error;
  });
  return { operator: { id, code, name, base, preset }, secret, until };
}

const BY_COMMAND = 'the command, by whoever holds the database';

async function addAdministrator(
  tx: Tx,
  { name, approval, administrator }: Opening,
  hash: string,
  until: string,
  now: string,
): Promise<void> {
  const organisationId =
    approval === null ? null : await tx.people.addOrganisation({ name, approvalNumber: approval });
  await enterAdministrator(tx, administrator, { organisationId, hash, until, now });
}

interface Entering {
  organisationId: string | null;
  hash: string;
  until: string;
  now: string;
}

/** Enters one person as administrator, with a first secret. */
export async function enterAdministrator(
  tx: Tx,
  { name, signInName, licence }: Administrator,
  { organisationId, hash, until, now }: Entering,
): Promise<void> {
  const { id, reference } = await tx.people.add({ name, licenceNumber: licence });
  await tx.people.join({ personId: id, organisationId, roles: ['administrator'], validFrom: now });
  await tx.people.giveCredential(id, signInName, hash, until);
  const payload = { person: reference, roles: ['administrator'], organisation: organisationId, by: BY_COMMAND };
  await record(tx, 'person.joined', payload, now);
}

export async function record(tx: Tx, what: string, payload: object, now: string): Promise<void> {
  await tx.record.append({
    who: null,
    authorisation: null,
    organisation: null,
    what,
    aircraft: null,
    times: { enteredAt: now },
    payload,
  });
}

/** @returns the base in its own spelling */
function checked({ code, name, base, preset, approval, administrator }: Opening): string {
  if (!CODE.test(code)) throw new OpeningRefused('code', 'is not 2 to 8 capital letters and digits, such as QXA');
  if (!PRESET_CHOICES.some((one) => one === preset)) {
    throw new OpeningRefused('preset', `is none of ${PRESET_CHOICES.join(', ')}`);
  }
  holdText('name', name, MOST.name);
  if (approval !== null) holdText('approval', approval, MOST.approval);
  holdAdministrator(administrator);
  try {
    return baseZone(base);
  } catch (error) {
    if (error instanceof IntervalInputError) {
      throw new OpeningRefused('base', 'is neither UTC nor the name of a time zone such as Europe/Paris');
    }
    throw error;
  }
}

/** @throws OpeningRefused */
export function holdAdministrator({ name, signInName, licence }: Administrator): void {
  holdText('administrator', name, MOST.name);
  holdText('signInName', signInName, MOST.signInName);
  if (licence !== null) holdText('licence', licence, MOST.licence);
}

function holdText(field: OpeningRefused['field'], text: string, most: number): void {
  if (text.trim() !== text || text === '')
    throw new OpeningRefused(field, 'is blank, or begins or ends with a blank');
  if (/\p{Cc}/u.test(text)) throw new OpeningRefused(field, 'holds a control character');
  if (text.length > most) throw new OpeningRefused(field, `is longer than ${most} characters`);
}

export function taken(signInName: string): OpeningRefused {
  return new OpeningRefused('signInName', `is taken: somebody on this server signs in as ${signInName}`);
}
