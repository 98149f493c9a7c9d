/**
 * Keeps names out of what is kept for ever. A stored act holds the id of each person, the record holds the salted
 * reference; names and licence numbers are looked up in the table of people when an act is read.
 */
import type { Act } from '#deferrals';

type Plain = { [key: string]: unknown };

export interface KnownPerson {
  name: string;
  licenceNumber: string | null;
  reference: string;
}

/** As stored: no names, no licence numbers. */
export function storedAct(act: Act): object {
  return storedPeople(act);
}

export function storedPeople(act: object): object {
  return walk(act, (person) => {
    const { name: _name, licence: _licence, ...rest } = person;
    return rest;
  }) as object;
}

/** As recorded: no names, no licence numbers, and references instead of ids. */
export function recordedAct(act: Act, people: ReadonlyMap<string, KnownPerson>): object {
  return recordedPeople(act, people);
}

export function recordedPeople(act: object, people: ReadonlyMap<string, KnownPerson>): object {
  return walk(storedPeople(act), (person) => ({
    ...person,
    person: people.get(String(person['person']))?.reference ?? 'unknown',
  })) as object;
}

/** The other way round: what was stored, from what was recorded. @param ids of people, by reference */
export function storedFromRecord(recorded: object, ids: ReadonlyMap<string, string>): object {
  return walk(recorded, (person) => {
    const reference = String(person['person']);
    return { ...person, person: ids.get(reference) ?? reference };
  }) as object;
}

/** Names and licence numbers put back; a person whose data were erased is called so. */
export function readAct(stored: object, people: ReadonlyMap<string, KnownPerson>): Act {
  return readPeople<Act>(stored, people);
}

export function readPeople<T>(stored: object, people: ReadonlyMap<string, KnownPerson>): T {
  return walk(stored, (person) => {
    const known = people.get(String(person['person']));
    const name = known?.name ?? '(name erased)';
    const signed = 'authorisation' in person;
    return { ...person, name, ...(signed ? { licence: known?.licenceNumber ?? '(erased)' } : {}) };
  }) as T;
}

/** Ids of all people in an act. */
export function peopleIn(act: object): string[] {
  const found = new Set<string>();
  visit(act, found);
  return [...found];
}

function visit(value: unknown, found: Set<string>): void {
  if (typeof value !== 'object' || value === null) return;
  for (const one of Array.isArray(value) ? (value as unknown[]) : Object.values(value)) visit(one, found);
  if (isAboutPerson(value as Plain)) found.add(String((value as Plain)['person']));
}

/** Rewrites every object that stands for a person: it has a `person`, and is or holds an authorisation or a role. */
function walk(value: unknown, rewrite: (person: Plain) => Plain): unknown {
  if (Array.isArray(value)) return value.map((one) => walk(one, rewrite));
  if (typeof value !== 'object' || value === null) return value;
  const inner: Plain = Object.fromEntries(
    Object.entries(value).map(([key, one]) => [key, typeof one === 'object' ? walk(one, rewrite) : one]),
  );
  if (!isAboutPerson(inner)) return inner;
  return 'role' in inner ? rewrite(inner) : keepPersonOnly(inner, rewrite);
}

function isAboutPerson(object: Plain): boolean {
  return typeof object['person'] === 'string' && ('role' in object || 'validFrom' in object);
}

/** An authorisation names its holder by id only: a name is never put into it. */
function keepPersonOnly(authorisation: Plain, rewrite: (person: Plain) => Plain): Plain {
  return { ...authorisation, person: rewrite({ person: authorisation['person'] })['person'] };
}
