/** Equipment by its number and its calibration, parts by their certificate. 145.A.40; 145.A.42 (from memory). Invented. */
import { describe, expect, it } from 'vitest';
import type { Card, CardStep, Need } from '#mel';
import { authorisation, refusalOf, writtenUp } from '../invented.fixture.js';
import { replay } from '../replay.js';
import { Bench, card } from './cards.fixture.js';
import type { EquipmentStated } from './equipment.js';

const GAUGE: Need = { kind: 'equipment', what: 'pressure gauge', calibrated: true };
const RIG: Need = { kind: 'equipment', what: 'test rig' };
const own = (number: string, calibratedUntil?: string): EquipmentStated => ({
  what: 'pressure gauge',
  number,
  ...(calibratedUntil === undefined ? {} : { calibratedUntil }),
});

const level = (needs: Need[]): CardStep => ({
  id: 'level',
  kind: 'measure',
  text: 'Read the level.',
  measure: { id: 'level', what: 'level', unit: 'l', from: 3, to: 4.5 },
  needs,
});

const on = (of: Partial<Card>, day?: string): Bench =>
  new Bench(writtenUp('2026-01-26T10:00Z'), day).start({ card: card({ accounts: [], ...of }) });

const atLevel = (...needs: Need[]): Bench => on({ steps: [level(needs)] });

const read = (bench: Bench, used: EquipmentStated[], base = 'UTC'): Bench =>
  bench.step('level', { kind: 'measured', value: 4, unit: 'l' }, 'tech', authorisation('tech'), { used, base });

const refused = (bench: Bench, used: EquipmentStated[], base?: string) => refusalOf(() => read(bench, used, base));

describe('equipment that a step uses', () => {
  it('is stated by its number before the step is done', () => {
    const none = refused(atLevel(RIG), []);
    expect(none.code).toBe('equipment-not-stated');
    expect(none.message).toBe('Step 1 "Read the level" uses test rig, and it is not stated which one: its number.');
    expect(refused(atLevel(RIG), [{ what: 'test rig', number: ' ' }]).code).toBe('equipment-not-stated');
    expect(refused(atLevel(RIG), [{ what: 'another rig', number: '1' }]).code).toBe('step-done-otherwise');
    const twice = [own('G-7', '2026-01-27'), own('G-8', '2026-01-27')];
    expect(refused(atLevel(GAUGE), twice).code).toBe('step-done-otherwise');
  });

  it('that only lies ready is stated by nobody', () => {
    expect(() => read(atLevel({ kind: 'supplies', what: 'gloves' }), [])).not.toThrow();
    expect(refused(atLevel({ kind: 'supplies', what: 'gloves' }), [{ what: 'gloves', number: '1' }]).code).toBe(
      'step-done-otherwise',
    );
  });

  it('is in calibration on the day of the step, its last day included', () => {
    expect(refused(atLevel(GAUGE), [own('G-7')]).message).toContain('its number, and until when it is calibrated');
    expect(refused(atLevel(GAUGE), [own('G-7', '2026-02-30')]).code).toBe('equipment-not-stated');
    const past = refused(atLevel(GAUGE), [own('G-7', '2026-01-26')]);
    expect(past.code).toBe('equipment-out-of-calibration');
    expect(past.message).toBe(
      'Step 1 "Read the level": the calibration of pressure gauge G-7 ended on 2026-01-26; it is used on 2026-01-27.',
    );
    const { life } = read(atLevel(GAUGE), [own('G-7', '2026-01-27')]);
    expect(life.cards[0]?.steps[0]).toMatchObject({
      used: [{ what: 'pressure gauge', number: 'G-7', calibratedUntil: '2026-01-27', usedOn: '2026-01-27' }],
    });
    expect(replay(life.acts)).toEqual(life);
  });

  it("is held against the operator's day, not that of UTC", () => {
    // 08:00 UTC on 27 January is 21:00 of that day in Auckland and 22:00 of the day before in Honolulu.
    const late = '2026-01-27T08:00:00Z';
    expect(atLevel(GAUGE).now).toBe(late);
    expect(() => read(atLevel(GAUGE), [own('G-7', '2026-01-26')], 'Pacific/Honolulu')).not.toThrow();
    expect(refused(atLevel(GAUGE).pass(240), [own('G-7', '2026-01-27')], 'Pacific/Auckland').code).toBe(
      'equipment-out-of-calibration',
    );
  });

  it('of a run is stated as it begins', () => {
    const run = card().steps.find(({ id }) => id === 'leak') as CardStep;
    const bench = on({ steps: [{ ...run, needs: [GAUGE] }] });
    const begin = (used: EquipmentStated[]) =>
      bench.step('leak', { kind: 'begun' }, 'tech', authorisation('tech'), { used });
    expect(refusalOf(() => begin([])).code).toBe('equipment-not-stated');
    begin([own('G-7', '2026-03-01')]).pass(5);
    const ran = { kind: 'ran' as const, readings: [{ id: 'case', value: 71, unit: 'C' }] };
    expect(() => bench.step('leak', ran)).not.toThrow();
  });
});

describe('a tool that the card wants calibrated', () => {
  const wrench: NonNullable<Card['accounts']> = [
    {
      id: 'w',
      pair: 'issue-return',
      what: 'wrench',
      where: 'store',
      kind: 'tool',
      numbered: true,
      undo: 'return it',
    },
  ];
  const need: Need = { kind: 'tool', what: 'torque wrench', account: 'w', calibrated: true };
  const issued = () =>
    on({ accounts: wrench, steps: [{ id: 'issue', kind: 'out', text: 'Issue.', account: 'w' }, level([need])] }).step(
      'issue',
      { kind: 'out', count: 1, number: 'TW-3' },
    );
  const tool = (number: string) => [{ what: 'torque wrench', number, calibratedUntil: '2026-02-01' }];

  it('is the one that was issued, and is in calibration', () => {
    const other = refused(issued(), tool('TW-4'));
    expect([other.code, other.message]).toEqual([
      'tool-not-issued',
      'Step 2 "Read the level": number TW-4 is not the torque wrench that this card issued: TW-3.',
    ]);
    expect(() => read(issued(), tool('TW-3'))).not.toThrow();
    expect(refused(issued(), []).code).toBe('equipment-not-stated');
  });
});

describe('a part that the card wants with its certificate', () => {
  const steps: CardStep[] = [{ id: 'valve', kind: 'renew', text: 'Fit it.', part: 'start valve', certified: true }];
  const fit = (certificate?: string) =>
    on({ steps }).step('valve', {
      kind: 'renewed',
      partNumber: 'V-1',
      batch: 'S-9',
      count: 1,
      ...(certificate === undefined ? {} : { certificate }),
    });

  it('is not fitted without it', () => {
    expect(refusalOf(() => fit()).code).toBe('certificate-missing');
    expect(refusalOf(() => fit(' ')).code).toBe('certificate-missing');
  });

  it('is told by it in the work that the card did', () => {
    expect(fit('F1-77').sign().life.work?.done[0]).toMatchObject({
      parts: [{ partNumber: 'V-1', certificate: 'F1-77' }],
    });
  });
});
