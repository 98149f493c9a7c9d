/**
 * The people of a random shift. Some may do what they do, some may not: of another operator or type, run out, not begun,
 * revoked, without the privilege, on the paper of somebody else, or a category A licence that released what others did.
 */
import { readInstant, writeInstant } from '#intervals';
import { actor, AIRCRAFT, authorisation } from '../invented.fixture.js';
import type { Authorisation, LicenceCategory, Privilege, Signature } from '../people.js';

const START = readInstant('start', '2026-03-01T00:00:00Z');
export const iso = (minute: number): string => writeInstant(START.add({ minutes: minute }));

export const PEOPLE = ['arn', 'bel', 'cor', 'dun'] as const;
export const ALL: Privilege[] = ['write-up', 'defer', 'sign-procedure', 'inspect', 'release'];
const FOREVER = 100_000;

/** How a signature is given; `from` and `until` are minutes of the shift, exclusive at the end. */
export interface Pen {
  person: string;
  holder: string;
  operator: string;
  type: string;
  categories: LicenceCategory[];
  privileges: Privilege[];
  from: number;
  until: number | null;
  revoked: number | null;
  /** Minutes before the entry at which it was signed; negative is in the future. */
  early: number;
  statement: string;
}

export const good = (person: string): Pen => ({
  person,
  holder: person,
  operator: AIRCRAFT.operator,
  type: AIRCRAFT.type,
  categories: ['B1'],
  privileges: ALL,
  from: -FOREVER,
  until: null,
  revoked: null,
  early: 0,
  statement: 'Done as the approved data say.',
});

export function sign(pen: Pen, now: number): Signature {
  const { person, holder, operator, type, categories, privileges, from, until, revoked, early, statement } = pen;
  const given: Partial<Authorisation> = {
    operator,
    aircraftTypes: [type],
    licenceCategories: categories,
    privileges,
    validFrom: iso(from),
    validUntil: until === null ? null : iso(until),
    revokedAt: revoked === null ? null : iso(revoked),
  };
  return {
    ...actor(person),
    licence: `LIC-${person}`,
    authorisation: authorisation(holder, given),
    statement,
    signedAt: iso(now - early),
    method: 'password',
    evidence: `session of ${person}`,
  };
}

/** Worked out anew, on minutes: may this signature stand for this act, entered then? `null`: whatever it is for. */
export function mayStand(pen: Pen, now: number, privilege: Privilege | null): boolean {
  const ends = Math.min(pen.until ?? FOREVER, pen.revoked ?? FOREVER);
  const valid = (at: number): boolean => at >= pen.from && at < ends;
  return (
    pen.holder === pen.person &&
    pen.operator === AIRCRAFT.operator &&
    pen.type === AIRCRAFT.type &&
    (privilege === null || pen.privileges.includes(privilege)) &&
    pen.early >= 0 &&
    pen.statement.trim() !== '' &&
    valid(now) &&
    valid(now - pen.early)
  );
}
