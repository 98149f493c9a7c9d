import { Temporal } from 'temporal-polyfill';
import { describe, expect, test } from 'vitest';
import type { Privilege } from '#deferrals';
import { loadMel, type Mel, type Row } from '#mel';
import { instantOf } from './planned-flights.js';
import { readSeed, readSeedFile, type SeedAct, type SeedTime } from './seed-files.js';

const folder = import.meta.dirname;
const seed = readSeed(folder);
const { openItems, fleet, people, operator } = seed;
const dayZero = '2026-01-15';

const PRIVILEGES: Partial<Record<SeedAct['act'], Privilege>> = {
  deferred: 'defer',
  'procedure-signed': 'sign-procedure',
  'placard-removed': 'sign-procedure',
  rectification: 'release',
  tested: 'release',
  restored: 'release',
  released: 'release',
};

const mels = new Map(
  operator.operators.map(({ id, mel: file }) => {
    const answer = loadMel(readSeedFile(folder, file), file);
    if ('errors' in answer) throw new Error(file);
    return [id, answer.mel];
  }),
);

const melOf = (operatorId: string): Mel => {
  const mel = mels.get(operatorId);
  if (mel === undefined) throw new Error(operatorId);
  return mel;
};

const items = openItems.aircraft.flatMap(({ mark, items: list }) => {
  const aircraft = fleet.aircraft.find((one) => one.mark === mark);
  if (aircraft === undefined) throw new Error(mark);
  return list.map(({ id, acts }) => {
    const deferral = acts.find((act) => act.act === 'deferred');
    return { id, acts, aircraft, deferral };
  });
});

const rowIn = ({ aircraft, deferral }: (typeof items)[number]): Row | undefined =>
  deferral === undefined ? undefined : melOf(aircraft.operator).row(deferral.entry, deferral.row, aircraft)?.row;

const isOpen = (acts: SeedAct[]): boolean => !acts.some((act) => act.act === 'released' && act.outcome === 'closed');

describe('the acts that led to the starting state', () => {
  test('happened before day 0, each item in its order', () => {
    for (const { id, acts } of items) {
      const instants = acts.map(({ at }) => instantOf(at, dayZero, seed));
      expect(
        acts.filter(({ at }) => at.day >= 0),
        id,
      ).toEqual([]);
      expect([...instants].sort(), id).toEqual(instants);
      expect(acts[0]?.act, id).toBe('written-up');
    }
  });

  test('are by members of the operator, authorised on that day for that type and act', () => {
    for (const { id, acts, aircraft } of items) {
      for (const { act, at, by } of acts) {
        const needed = PRIVILEGES[act];
        if (needed === undefined) {
          expect(
            people.memberships.some((one) => one.person === by && one.operator === aircraft.operator),
            `${id} ${act}`,
          ).toBe(true);
        } else {
          expect(authorised(by, aircraft, needed, at), `${id} ${act} by ${by}`).toBe(true);
        }
      }
    }
  });

  test('have the concurrence of another person who may give it', () => {
    for (const { id, aircraft, deferral } of items) {
      if (deferral === undefined) continue;
      expect(deferral.concurs, id).not.toBe(deferral.by);
      expect(authorised(deferral.concurs, aircraft, 'concur', deferral.at), id).toBe(true);
    }
  });

  test('put nobody at two stations within four hours', () => {
    const seen = items
      .flatMap(({ acts }) => acts.map(({ by, at }) => ({ by, at, when: instantOf(at, dayZero, seed) })))
      .sort((left, right) => (left.when < right.when ? -1 : 1));
    for (const [index, here] of seen.entries()) {
      const before = seen.slice(0, index).findLast(({ by }) => by === here.by);
      if (before === undefined || before.at.station === here.at.station) continue;
      const hours = Temporal.Instant.from(here.when).since(Temporal.Instant.from(before.when)).total('hours');
      expect(hours, `${here.by} at ${here.at.station}`).toBeGreaterThan(4);
    }
  });

  test('defer on rows that exist for that aircraft and cover the failed unit', () => {
    for (const item of items) {
      if (item.deferral === undefined) continue;
      const row = rowIn(item);
      expect(row, item.id).toBeDefined();
      const units = melOf(item.aircraft.operator).unitsOf(item.deferral.entry, item.aircraft) ?? [];
      const covered = row?.covers ?? units;
      expect(
        item.deferral.units.filter((unit) => !covered.includes(unit)),
        item.id,
      ).toEqual([]);
    }
  });

  test('sign procedures of that row, with a number for each thing left', () => {
    for (const item of items) {
      const row = rowIn(item);
      for (const act of item.acts) {
        if (act.act !== 'procedure-signed') continue;
        const procedure = row?.procedures?.find(({ id }) => id === act.work);
        expect(procedure, `${item.id} ${act.work}`).toBeDefined();
        expect(act.tags.length, `${item.id} ${act.work}`).toBe(procedure?.leaves?.length ?? 0);
      }
    }
  });

  test('use every tag once', () => {
    const tags = items.flatMap(({ acts }) =>
      acts.flatMap((act) =>
        act.act === 'procedure-signed' ? act.tags : act.act === 'placard-fitted' ? [act.tag] : [],
      ),
    );
    expect(tags.length).toBeGreaterThan(8);
    expect(tags.filter((tag, at) => tags.indexOf(tag) !== at)).toEqual([]);
  });

  test('name fault messages that the MEL knows, so that the entry can be found by them', () => {
    for (const { id, acts, aircraft } of items) {
      const messages = melOf(aircraft.operator).entries.flatMap(({ faultMessages }) => faultMessages ?? []);
      const writeUp = acts.find((act) => act.act === 'written-up');
      expect(messages, id).toContain(writeUp?.faultMessage);
    }
  });
});

describe('the fleet as it stands', () => {
  const openOn = (mark: string) => items.filter(({ aircraft, acts }) => aircraft.mark === mark && isOpen(acts));

  test('one aircraft has nothing open and a closed item to read', () => {
    expect(openOn('Q-KEA')).toEqual([]);
    expect(items.some(({ aircraft }) => aircraft.mark === 'Q-KEA')).toBe(true);
  });

  test('one has an unanswered write-up', () => {
    expect(openOn('Q-KEB').map(({ acts }) => acts.length)).toEqual([1]);
  });

  test('one is in the last two days of its ten', () => {
    const [item] = openOn('Q-KEC');
    expect(item === undefined ? null : rowIn(item)?.category).toBe('C');
    expect((item?.acts[0]?.at.day ?? 0) + 10).toBe(1);
  });

  test('one has two items that bear on icing, judged together by a named person', () => {
    expect(openOn('Q-KED').map(({ deferral }) => deferral?.entry)).toEqual(['30-11-21', '30-81-11']);
    const judged = openItems.aircraft.find(({ mark }) => mark === 'Q-KED')?.acts;
    expect(judged?.map(({ accepted }) => accepted)).toEqual([true]);
  });

  test('one starts an engine by hand, and one counts its last flights beside two cabin items', () => {
    expect(openOn('Q-KEO').map(({ deferral }) => deferral?.entry)).toEqual(['80-12-11']);
    expect(openOn('Q-KEP').map((item) => rowIn(item)?.interval ?? rowIn(item)?.category)).toEqual([
      '6 flights',
      'D',
      'D',
    ]);
  });

  test('the second operator defers by its own MEL', () => {
    const [item] = openOn('Q-SBA');
    expect(item === undefined ? null : rowIn(item)?.source?.document).toBe('K-MMEL');
    expect(item === undefined ? null : rowIn(item)?.category).toBe('B');
  });
});

function authorised(
  person: string,
  aircraft: { operator: string; type: string },
  privilege: Privilege,
  at: SeedTime,
): boolean {
  return people.authorisations.some(
    (one) =>
      one.person === person &&
      one.operator === aircraft.operator &&
      one.aircraftTypes.includes(aircraft.type) &&
      one.privileges.includes(privilege) &&
      one.fromDay <= at.day &&
      at.day < one.toDay,
  );
}
