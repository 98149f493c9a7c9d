import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { newId, type LegRow, type Store, type Tx } from '#store';
import { freshDatabase, type FreshDatabase } from '../support/postgres.js';
import { withClient } from '../support/with-client.js';
import { aLeg, aMessage } from './a-movement.js';
import { anEntry, anOperator, openedStore, someInstant, type AnOperator } from './an-operator.js';

let database: FreshDatabase;
let store: Store;
let operator: AnOperator;
let entryId: string;

beforeAll(async () => {
  database = await freshDatabase();
  store = await openedStore(database);
  operator = await anOperator(database, store, 'MA');
  entryId = await within(async (tx) => (await tx.record.append(anEntry(operator))).id);
});

afterAll(async () => {
  await store.close();
  await database.drop();
});

const within = <T>(work: (tx: Tx) => Promise<T>): Promise<T> =>
  store.withOperator(operator.id, operator.person, work);

/** An aircraft of its own, so that no test sees the legs of another. */
const anAircraft = (registration: string): Promise<string> =>
  within((tx) => tx.aircraft.add({ registration, type: 'T1', serial: 2, configuration: [] }));

const leg = (aircraftId: string, changes: Partial<LegRow> = {}) => aLeg({ aircraftId, entryId, ...changes });

describe('versions of a leg', () => {
  it('the highest counts, and the earlier ones stay as they were', async () => {
    const aircraft = await anAircraft('Q-LA');
    const first = leg(aircraft);
    const second = {
      ...first,
      version: 2,
      flightMinutes: 61,
      source: 'person' as const,
      reason: 'read off the sheet',
    };
    await within((tx) => tx.legs.add([first]));
    await within((tx) => tx.legs.add([second]));
    const { flown, all, one, flight } = await within(async (tx) => ({
      flown: await tx.legs.flown(aircraft, someInstant),
      all: await tx.legs.versions([first.id]),
      one: await tx.legs.get(first.id),
      flight: await tx.legs.ofFlights([{ flight: 'ZZ1', scheduledOn: '2026-03-01' }]),
    }));
    expect(flown).toEqual([{ ...second, operatorId: operator.id }]);
    expect(one).toEqual(flown[0]);
    expect(flight.filter(({ aircraftId }) => aircraftId === aircraft)).toEqual(flown);
    expect(all.map(({ version, flightMinutes }) => [version, flightMinutes])).toEqual([
      [1, 60],
      [2, 61],
    ]);
  });

  it('a second one under the same number is refused', async () => {
    const first = leg(operator.aircraft);
    await within((tx) => tx.legs.add([first]));
    await expect(within((tx) => tx.legs.add([{ ...first, cycles: 2 }]))).rejects.toMatchObject({
      driverError: { code: '23505' },
    });
  });

  it.each([
    ['minutes below zero', { flightMinutes: -1 }],
    ['a version below one', { version: 0 }],
    ['an ending that is none', { ending: 'crashed' as never }],
  ])('%s are refused', async (_, changes) => {
    await expect(within((tx) => tx.legs.add([leg(operator.aircraft, changes)]))).rejects.toMatchObject({
      driverError: { code: '23514' },
    });
  });

  it('one that moved to another aircraft is no longer of the first', async () => {
    const [one, other] = [await anAircraft('Q-LB'), await anAircraft('Q-LC')];
    const first = leg(one);
    await within((tx) => tx.legs.add([first, { ...first, version: 2, aircraftId: other }]));
    expect(await within((tx) => tx.legs.flown(one, someInstant))).toEqual([]);
    expect(await within((tx) => tx.legs.flown(other, someInstant))).toHaveLength(1);
  });

  it('one that was withdrawn was not flown', async () => {
    const aircraft = await anAircraft('Q-LD');
    const first = leg(aircraft);
    await within((tx) => tx.legs.add([first, { ...first, version: 2, ending: 'withdrawn' }]));
    expect(await within((tx) => tx.legs.flown(aircraft, someInstant))).toEqual([]);
  });
});

describe('what stands beside a leg', () => {
  it('is the flight before it and the one after it, of the same aircraft, told by messages', async () => {
    const aircraft = await anAircraft('Q-LE');
    const at = (hour: number) => `2026-03-01T${String(hour).padStart(2, '0')}:00:00.000Z`;
    const flight = (name: string, hour: number, changes: Partial<LegRow> = {}) =>
      leg(aircraft, { flight: name, offBlockAt: at(hour), ...changes });
    const gone = flight('ZZ14', 12);
    await within((tx) =>
      tx.legs.add([
        flight('ZZ11', 6),
        flight('ZZ12', 8),
        flight('ZZ13', 10),
        flight('ZZ13', 11, { sequence: 2 }),
        gone,
        { ...gone, version: 2, ending: 'withdrawn' },
        flight('ZZ15', 13, { source: 'person' }),
        flight('ZZ16', 14),
        leg(operator.aircraft, { flight: 'ZZ17', offBlockAt: at(12) }),
      ]),
    );
    const place = { aircraftId: aircraft, flight: 'ZZ13', scheduledOn: '2026-03-01', offBlockAt: at(11) };
    const beside = await within((tx) => tx.legs.besides([place]));
    expect(beside.map(({ flight: name }) => name).sort()).toEqual(['ZZ12', 'ZZ16']);
    expect(beside[0]?.scheduledOn).toBe('2026-03-01');
  });
});

describe('a planned flight', () => {
  const plan = (aircraftId: string, tx: Tx) =>
    tx.flights.add({
      aircraftId,
      number: 'ZZ 1',
      fromStation: 'QQA',
      toStation: 'QQA',
      offBlockAt: '2026-03-01T08:30:00.000Z',
    });

  it('is no longer planned once a leg of it has flown, and is again when the leg turns out not to have', async () => {
    const aircraft = await anAircraft('Q-LF');
    await within((tx) => tx.operators.addStation({ code: 'QQA', name: 'Somewhere', zone: 'UTC' }));
    const flightId = await within((tx) => plan(aircraft, tx));
    const planned = async () => (await within((tx) => tx.flights.planned(aircraft, someInstant, 5))).length;
    const ramp = leg(aircraft, {
      flightId,
      ending: 'ramp',
      airborneAt: null,
      landedAt: null,
      flightMinutes: 0,
      cycles: 0,
      landings: 0,
    });
    expect(await planned()).toBe(1);
    await within((tx) => tx.legs.add([ramp]));
    expect(await planned()).toBe(1);
    await within((tx) => tx.legs.add([{ ...ramp, version: 2, airborneAt: someInstant, ending: 'under-way' }]));
    expect(await planned()).toBe(0);
    await within((tx) => tx.legs.add([{ ...ramp, version: 3 }]));
    expect(await planned()).toBe(1);
  });
});

describe('a message', () => {
  it('is found by its flight and day while it is in use, and by its text always', async () => {
    const id = await within((tx) => aMessage(tx, entryId, 'MVT\nZZ31/01.QMA.QQA\nAD0800'));
    const flights = [{ flight: 'ZZ1', scheduledOn: '2026-03-01' }];
    const inUse = () => within(async (tx) => (await tx.movements.ofFlights(flights)).map((row) => row.id));
    expect(await inUse()).toContain(id);
    await within((tx) => tx.movements.changeMessage(id, 1, { state: 'mended' }));
    expect(await inUse()).not.toContain(id);
    const { sha256 } = await within(async (tx) => (await tx.movements.message(id)) as { sha256: string });
    expect(await within(async (tx) => (await tx.movements.withTexts([sha256])).map((row) => row.id))).toContain(id);
  });

  it('keeps its text: the server may change only whether it is used and when it first came', async () => {
    for (const change of ["text = ''", 'delivery_id = id', "registration = 'Q'"]) {
      const refused = withClient(database.appUrl, async (client) => {
        await client.query('begin');
        await client.query("select set_config('app.operator', $1, true)", [operator.id]);
        await client.query(`update movement_message set version = version + 1, ${change}`);
      });
      await expect(refused, change).rejects.toMatchObject({ code: '42501' });
    }
  });

  it('is about no aircraft of another operator', async () => {
    const other = await anOperator(database, store, 'MB');
    await expect(within((tx) => tx.legs.add([leg(other.aircraft)]))).rejects.toMatchObject({
      driverError: { code: '23503' },
    });
  });
});

it('the intake of an operator is taken by one transaction at a time, and that of another operator meanwhile', async () => {
  const other = await anOperator(database, store, 'MC');
  const order: string[] = [];
  let firstHolds: () => void = () => undefined;
  const holding = new Promise<void>((resolve) => (firstHolds = resolve));
  let letGo: () => void = () => undefined;
  const released = new Promise<void>((resolve) => (letGo = resolve));
  const first = within(async (tx) => {
    await tx.movements.takeIntake();
    firstHolds();
    await released;
    order.push('first');
  });
  await holding;
  const second = within(async (tx) => {
    await tx.movements.takeIntake();
    order.push('second');
  });
  await store.withOperator(other.id, null, async (tx) => {
    await tx.movements.takeIntake();
    order.push('of another operator');
  });
  letGo();
  await Promise.all([first, second]);
  expect(order).toEqual(['of another operator', 'first', 'second']);
});

it('aircraft are found by the letters and digits of their mark', async () => {
  const id = await anAircraft('q-lg 7');
  expect((await within((tx) => tx.aircraft.withMarks(['QLG7', newId()]))).map((one) => one.id)).toEqual([id]);
});
