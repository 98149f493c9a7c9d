/**
 * Loads the demo into an empty database: two invented operators with their people, fleet, MEL and flights, and the open
 * items as the acts that led to them, judged by the same rules as any other act.
 */
import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { loadCards, readMel } from '#mel';
import { createOperator, type FlightRow, newId, type Tx } from '#store';
import { hashSecret } from '../apps/server/src/index.js';
import { groundedIn, isGrounded } from './grounded.js';
import { dayIn, type DemoOptions, type Ids, idOf } from './loading.js';
import { playOpenItems } from './play-open-items.js';
import { plannedFlights, type SeedFlight } from './planned-flights.js';
import { readSeed, readSeedFile, type Seed } from './seed-files.js';

/** What a person needs to try the demo. */
export interface DemoLoaded {
  secret: string;
  signIns: { name: string; does: string }[];
}

export async function loadDemo(options: DemoOptions): Promise<DemoLoaded> {
  const seed = readSeed(options.folder);
  const { secret } = seed.operator.demo;
  const hash = await hashSecret(secret);
  const person = new Map(seed.people.people.map(({ id }) => [id, newId()]));
  const entered = new Set<string>();
  for (const operator of seed.operator.operators) {
    const ids = await loadOperator(options, seed, operator, { person, entered, hash });
    await playOpenItems(options, seed, operator, ids);
  }
  return { secret, signIns: demoSignIns(seed) };
}

/** The demo sign-ins as the files name them, for a start on a database that holds the demo already. */
export function demoOf(folder: string): DemoLoaded {
  const seed = readSeed(folder);
  return { secret: seed.operator.demo.secret, signIns: demoSignIns(seed) };
}

function demoSignIns(seed: Seed): DemoLoaded['signIns'] {
  return seed.people.people.map(({ signIn, does }) => ({ name: signIn, does }));
}

interface Entering {
  person: Map<string, string>;
  /** People who were entered for an operator before. */
  entered: Set<string>;
  hash: string;
}

type Operator = Seed['operator']['operators'][number];

async function loadOperator(options: DemoOptions, seed: Seed, operator: Operator, entering: Entering): Promise<Ids> {
  const { ownerUrl, store } = options;
  const settings = Object.fromEntries(operator.settings.map(({ key, value }) => [key, value]));
  const reasons = Object.fromEntries(operator.settings.map(({ key, reason }) => [key, reason]));
  const id = await createOperator(ownerUrl, {
    code: operator.code,
    name: operator.name,
    invented: true,
    base: operator.base,
    settings: { ...settings, preset: operator.preset, reasons },
  });
  return store.withOperator(id, null, async (tx) => {
    const ids: Ids = { operator: id, person: entering.person, organisation: new Map(), aircraft: new Map() };
    await loadOrganisations(tx, seed, operator, ids);
    await loadPeople(tx, seed, operator, ids, entering, options.now);
    await loadAtStations(tx, seed, operator, ids, options.now);
    await loadFleet(tx, seed, operator, ids, options);
    await loadMelFile(tx, options, operator);
    await loadCardFile(tx, options, operator);
    return ids;
  });
}

async function loadOrganisations(tx: Tx, seed: Seed, operator: Operator, ids: Ids): Promise<void> {
  for (const { id, name, approval, operator: of } of seed.operator.organisations) {
    if (of !== null && of !== operator.id) continue;
    ids.organisation.set(id, await tx.people.addOrganisation({ name, approvalNumber: approval }));
  }
  for (const { code, name, zone } of seed.operator.stations) await tx.operators.addStation({ code, name, zone });
}

async function loadPeople(
  tx: Tx,
  seed: Seed,
  operator: Operator,
  ids: Ids,
  { entered, hash }: Entering,
  now: string,
): Promise<void> {
  const { people, memberships, authorisations } = seed.people;
  for (const membership of memberships.filter((one) => one.operator === operator.id)) {
    const person = people.find(({ id }) => id === membership.person);
    if (!person) throw new Error(`people.yaml names ${membership.person}, who is not in it`);
    const personId = idOf(ids.person, person.id);
    const isNew = !entered.has(person.id);
    if (isNew) {
      const licence = authorisations.find((one) => one.person === person.id)?.licence ?? null;
      await tx.people.add({ id: personId, name: person.name, licenceNumber: licence });
    }
    const organisationId = idOf(ids.organisation, membership.organisation);
    await tx.people.join({ personId, organisationId, roles: membership.roles, validFrom: daysFrom(now, -800) });
    if (isNew) await tx.people.giveCredential(personId, person.signIn, hash);
    entered.add(person.id);
  }
  for (const given of authorisations.filter((one) => one.operator === operator.id)) {
    await tx.people.authorise({
      personId: idOf(ids.person, given.person),
      organisationId: idOf(ids.organisation, given.organisation),
      number: given.number,
      aircraftTypes: given.aircraftTypes,
      licenceCategories: given.licenceCategories,
      privileges: given.privileges,
      validFrom: daysFrom(now, given.fromDay),
      validUntil: daysFrom(now, given.toDay),
    });
  }
}

async function loadAtStations(tx: Tx, { people }: Seed, { id }: Operator, ids: Ids, now: string): Promise<void> {
  for (const { operator, station, person, equipment = [], source } of people.atStations) {
    if (operator !== id) continue;
    const personId = person === undefined ? null : idOf(ids.person, person);
    await tx.stationCovers.add({ station, personId, equipment, source, enteredAt: now });
  }
}

async function loadFleet(tx: Tx, seed: Seed, operator: Operator, ids: Ids, options: DemoOptions): Promise<void> {
  for (const { mark, operator: of, type, serial, configuration } of seed.fleet.aircraft) {
    if (of !== operator.id) continue;
    ids.aircraft.set(mark, await tx.aircraft.add({ registration: mark, type, serial, configuration }));
  }
  const dayZero = dayIn(options.now, operator.base);
  const grounded = groundedIn(seed, dayZero);
  for (const flight of plannedFlights(seed, dayZero)) {
    const aircraftId = ids.aircraft.get(flight.aircraft);
    if (aircraftId === undefined) continue;
    await tx.flights.add({
      aircraftId,
      number: flight.number,
      fromStation: flight.from,
      toStation: flight.to,
      offBlockAt: flight.offBlockAt,
      onBlockAt: flight.onBlockAt,
      flightMinutes: flight.flightMinutes,
      state: stateOf(flight, isGrounded(grounded, flight), options.now),
      facts: flight.facts,
    });
  }
}

/** What should have left by now and could not was cancelled. */
function stateOf({ offBlockAt, onBlockAt }: SeedFlight, grounded: boolean, now: string): FlightRow['state'] {
  if (grounded && Date.parse(offBlockAt) <= Date.parse(now)) return 'cancelled';
  return Date.parse(onBlockAt) <= Date.parse(now) ? 'flown' : 'planned';
}

async function loadMelFile(tx: Tx, { folder, now }: DemoOptions, operator: Operator): Promise<void> {
  const text = JSON.stringify(readSeedFile(folder, operator.mel));
  const read = readMel(text, join(folder, operator.mel));
  if ('errors' in read) throw new Error(`${operator.mel}: ${read.errors[0]?.reason ?? 'does not load'}`);
  const { aircraftType, document, revision, effectiveOn } = read.mel.content;
  const content = JSON.stringify(read.mel.content);
  const sha256 = createHash('sha256').update(content).digest('hex');
  const id = await tx.mel.add({ aircraftType, document, revision, effectiveOn, content, sha256, loadedAt: now });
  await tx.mel.putInForce(id);
}

async function loadCardFile(tx: Tx, { folder, now }: DemoOptions, { cards: file }: Operator): Promise<void> {
  if (file === undefined) return;
  const loaded = loadCards(readSeedFile(folder, file), join(folder, file));
  if ('errors' in loaded) throw new Error(`${file}: ${loaded.errors[0]?.reason ?? 'does not load'}`);
  const { aircraftType, document, revision, effectiveOn } = loaded.library;
  const content = JSON.stringify(loaded.library);
  const sha256 = createHash('sha256').update(content).digest('hex');
  await tx.cards.putInForce({ aircraftType, document, revision, effectiveOn, content, sha256, loadedAt: now });
}

function daysFrom(now: string, days: number): string {
  return new Date(Date.parse(now) + days * 86_400_000).toISOString();
}
