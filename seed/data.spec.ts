import { Temporal } from 'temporal-polyfill';
import { describe, expect, test } from 'vitest';
import { readSeed } from './seed-files.js';

const seed = readSeed(import.meta.dirname);
const { operator, people, fleet, flights, openItems } = seed;

const idsOf = (value: unknown): string[] => {
  if (typeof value !== 'object' || value === null) return [];
  const own = 'id' in value && typeof value.id === 'string' ? [value.id] : [];
  return [...own, ...Object.values(value).flatMap(idsOf)];
};

const twice = (names: readonly string[]): string[] => names.filter((name, at) => names.indexOf(name) !== at);

const unknownTo = (known: readonly string[], used: readonly string[]): string[] =>
  used.filter((name) => !known.includes(name));

const operatorIds = operator.operators.map(({ id }) => id);
const organisationIds = operator.organisations.map(({ id }) => id);
const personIds = people.people.map(({ id }) => id);
const codes = operator.stations.map(({ code }) => code);
const marks = fleet.aircraft.map(({ mark }) => mark);
const typeNames = fleet.types.map(({ name }) => name);

describe('names and references', () => {
  test('no two things in any of the files share an id', () => {
    const ids = idsOf(seed);
    expect(ids.length).toBeGreaterThan(200);
    expect(twice(ids)).toEqual([]);
  });

  test('codes, marks, sign-in names, approvals and authorisation numbers are used once', () => {
    expect(twice([...codes, ...operator.operators.map(({ code }) => code)])).toEqual([]);
    expect(twice(marks)).toEqual([]);
    expect(twice(people.people.map(({ signIn }) => signIn))).toEqual([]);
    expect(twice(operator.organisations.map(({ approval }) => approval))).toEqual([]);
    expect(twice(people.authorisations.map(({ number }) => number))).toEqual([]);
  });

  test('people belong to operators, organisations and stations that exist', () => {
    const held = [...people.memberships, ...people.authorisations];
    expect(
      unknownTo(
        personIds,
        held.map(({ person }) => person),
      ),
    ).toEqual([]);
    expect(
      unknownTo(
        operatorIds,
        held.map((one) => one.operator),
      ),
    ).toEqual([]);
    expect(
      unknownTo(
        organisationIds,
        held.map(({ organisation }) => organisation),
      ),
    ).toEqual([]);
    expect(
      unknownTo(
        codes,
        people.memberships.map(({ station }) => station),
      ),
    ).toEqual([]);
    expect(
      unknownTo(
        typeNames,
        people.authorisations.flatMap(({ aircraftTypes }) => aircraftTypes),
      ),
    ).toEqual([]);
  });

  test('nobody works for an operator through the organisation of another', () => {
    const ownerOf = new Map(operator.organisations.map((one) => [one.id, one.operator]));
    const strangers = [...people.memberships, ...people.authorisations].filter((one) => {
      const owner = ownerOf.get(one.organisation);
      return owner !== null && owner !== one.operator;
    });
    expect(strangers).toEqual([]);
  });

  test('every authorisation belongs to a membership', () => {
    const memberships = people.memberships.map((one) => `${one.person} ${one.operator} ${one.organisation}`);
    const used = people.authorisations.map((one) => `${one.person} ${one.operator} ${one.organisation}`);
    expect(unknownTo(memberships, used)).toEqual([]);
  });

  test('aircraft have an operator, a type and configurations of that type', () => {
    expect(
      unknownTo(
        operatorIds,
        fleet.aircraft.map((one) => one.operator),
      ),
    ).toEqual([]);
    for (const { mark, type, configuration } of fleet.aircraft) {
      const known = fleet.types.find(({ name }) => name === type)?.configurations.map(({ code }) => code) ?? [];
      expect(configuration.length, mark).toBeGreaterThan(0);
      expect(unknownTo(known, configuration), mark).toEqual([]);
    }
  });

  test('flights and open items are those of aircraft and stations that exist', () => {
    expect(
      unknownTo(
        marks,
        [...flights.rotations, ...openItems.aircraft.map(({ mark }) => ({ aircraft: mark }))].map(
          ({ aircraft }) => aircraft,
        ),
      ),
    ).toEqual([]);
    expect(
      unknownTo(
        codes,
        flights.routes.flatMap(({ from, to }) => [from, to]),
      ),
    ).toEqual([]);
    expect(Object.keys(flights.departing).sort()).toEqual([...codes].sort());
    expect(Object.keys(flights.defaults).sort()).toEqual([...operatorIds].sort());
  });
});

describe('what the demo must be able to show', () => {
  test('two operators, the second with one aircraft, the first with six', () => {
    const counts = operatorIds.map((id) => fleet.aircraft.filter((one) => one.operator === id).length);
    expect(counts).toEqual([6, 1]);
  });

  test('marks that no state gives, and two configurations in use', () => {
    expect(marks.filter((mark) => !/^Q-[A-Z]{3}$/.test(mark))).toEqual([]);
    expect(new Set(fleet.aircraft.flatMap(({ configuration }) => configuration)).size).toBe(2);
  });

  test('a type name unlike a real one: one plain word', () => {
    expect(typeNames.filter((name) => !/^[A-Z][a-z]+$/.test(name))).toEqual([]);
  });

  test('every role has somebody', () => {
    const roles = [
      'technician',
      'maintenance-control',
      'engineer',
      'commander',
      'dispatcher',
      'quality',
      'mel-engineer',
      'administrator',
    ];
    expect(
      unknownTo(
        people.memberships.flatMap((one) => one.roles),
        roles,
      ),
    ).toEqual([]);
  });

  test('technicians of category B1, B2 and A, and one person who works for both operators', () => {
    const categories = people.authorisations.flatMap(({ licenceCategories }) => licenceCategories);
    expect(unknownTo(categories, ['A', 'B1', 'B2'])).toEqual([]);
    const operatorsOf = (person: string) =>
      new Set(people.memberships.filter((one) => one.person === person).map((one) => one.operator));
    expect(personIds.filter((id) => operatorsOf(id).size === 2)).toEqual(['pe-merrondel']);
  });

  test('one authorisation has run out and one is for a type that its operator does not fly', () => {
    expect(people.authorisations.filter(({ toDay }) => toDay <= 0).map(({ id }) => id)).toEqual(['au-hesker']);
    const flown = (id: string) => fleet.aircraft.filter((one) => one.operator === id).map(({ type }) => type);
    const elsewhere = people.authorisations.filter(
      (one) => !one.aircraftTypes.some((type) => flown(one.operator).includes(type)),
    );
    expect(elsewhere.map(({ id }) => id)).toEqual(['au-tondry']);
  });

  test('one demo secret of three words, said to be for the demo only', () => {
    expect(operator.demo.only).toBe(true);
    expect(operator.demo.secret).toMatch(/^[a-z]+ [a-z]+ [a-z]+$/);
  });
});

describe('stations and bases', () => {
  const offsetsOf = (zone: string): string[] =>
    ['2026-01-15', '2026-07-15'].map((day) => Temporal.PlainDate.from(day).toZonedDateTime(zone).offset);

  test('lie in zones that exist', () => {
    const zones = [...operator.stations, ...operator.operators.map(({ base }) => ({ zone: base }))];
    for (const { zone } of zones) expect(() => offsetsOf(zone), zone).not.toThrow();
  });

  test('have a zone whose clocks change, one without, and one at UTC+5:45', () => {
    const offsets = operator.stations.map(({ zone }) => offsetsOf(zone));
    expect(offsets.some(([winter, summer]) => winter !== summer)).toBe(true);
    expect(offsets.some(([winter, summer]) => winter === summer && winter === '+03:00')).toBe(true);
    expect(offsets.some(([winter, summer]) => winter === '+05:45' && summer === '+05:45')).toBe(true);
  });
});
