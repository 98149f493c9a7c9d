/** When work was done, why something was entered late, and what an extension was granted on, put right by two people. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Repeat } from '#mel';
import type { DefectLife } from '../defect-life.js';
import { signProcedure } from '../deferring/sign-procedure.js';
import { extendInterval } from '../extending/extend.js';
import { actor, context, deferredAs, refusalOf, signed, writtenUp } from '../invented.fixture.js';
import type { Counting } from '../repeating/good-for.js';
import type { Departure } from '../repeating/obligation.js';
import { obligationsOf } from '../repeating/obligations.js';
import { proceed, replay } from '../replay.js';
import { readsOtherwise } from './admit-correction.js';
import { askCorrection, lookAndCorrect } from './ask-correction.js';
import { correct } from './correct.js';
import { asked, given, RECORDED, second } from './corrections.fixture.js';
import { readsNow } from './reads-now.js';

const DONE = '2026-01-26T12:00Z';
const procedures = [{ id: 'M1', kind: 'M' as const, text: 'Look.', repeat: 'each-flight-day' as const }];
const owed = deferredAs({ category: 'C', procedures }, RECORDED);
const work = '22-10-01/1/M1';
const by = signed('tech', DONE);
const done = proceed(
  owed,
  signProcedure(owed, { id: 'm', by, work, doneAt: DONE, lateReason: 'no signal' }, context(DONE)),
);

type Over = Parameters<typeof asked>[1];

/** Asked for by one, looked at by another. */
function corrected(life: DefectLife, over: Over, at = given): DefectLife {
  const waits = proceed(life, askCorrection(life, asked(life, over), at));
  expect(replay(waits.acts)).toEqual(waits);
  const { by: asker, flown = [] } = over;
  const secondLook = asker === undefined ? second : LATER;
  const look = { id: 'look', asked: waits.asked[0]?.id ?? '', secondLook, flown };
  const right = proceed(waits, lookAndCorrect(waits, look, at));
  expect([replay(right.acts), right.asked]).toEqual([right, []]);
  return right;
}

const T = '2026-02-05T10:00Z';
const LATER = signed('second', T);

describe('when work was done', () => {
  it('reads earlier once a second person has looked, and counts from then', () => {
    const right = corrected(done, { act: 'm', field: 'doneAt', now: '2026-01-26T11:00Z' });
    expect(right.procedures).toEqual([{ ...done.procedures[0], doneAt: '2026-01-26T11:00Z' }]);
    expect(right.limits).toEqual(done.limits);
    expect(right.acts[2]).toEqual(done.acts[2]);
  });

  it('is not made later, which could make it good for longer, nor by one person', () => {
    for (const now of ['2026-01-26T12:00:01Z', '2026-01-26T13:00+01:00', '2026-01-27T09:00Z']) {
      const later = asked(done, { act: 'm', field: 'doneAt', now });
      expect(refusalOf(() => askCorrection(done, later, given)).code).toBe('correction-gives-more-time');
    }
    const earlier = asked(done, { act: 'm', field: 'doneAt', now: '2026-01-26T11:00Z' });
    expect(refusalOf(() => correct(done, earlier, given)).code).toBe('second-look-missing');
  });

  it('is called by its words where it reads otherwise, and where nothing of the kind stands', () => {
    const said = { act: 'm', field: 'doneAt' as const, now: '2026-01-26T11:00Z' };
    const other = refusalOf(() => askCorrection(done, asked(done, { ...said, was: LATER.signedAt }), given));
    expect(other.message).toBe(
      `There is nothing to correct in the work of a procedure, entered ${DONE} for defect D1: when it was done does not read "${LATER.signedAt}" there.`,
    );
    const empty = refusalOf(() => askCorrection(done, asked(done, { ...said, was: null }), given));
    expect(empty.message).toContain('when it was done is not empty there.');
    const none = readsOtherwise(done, { act: 'm', field: 'whyNotFixed' });
    expect(none.message).toContain('why it was not rectified in time does not stand there.');
  });

  it('is not made earlier across a departure, when asked for nor when somebody looked', () => {
    const over = { act: 'm', field: 'doneAt' as const, now: '2026-01-26T11:00Z' };
    const waits = proceed(done, askCorrection(done, asked(done, over), given));
    const look = { id: 'look', asked: 'c', secondLook: second };
    for (const [offBlockAt, left] of [
      ['2026-01-26T10:59:59Z', false],
      ['2026-01-26T11:00Z', true],
      ['2026-01-26T12:59:59+01:00', true],
      ['2026-01-26T12:00Z', false],
    ] as const) {
      const flown = [departure(offBlockAt)];
      const asks = () => askCorrection(done, asked(done, { ...over, flown }), given);
      const looks = () => lookAndCorrect(waits, { ...look, flown }, given);
      if (!left) expect([...asks(), ...looks()]).toHaveLength(2);
      for (const refused of left ? [refusalOf(asks), refusalOf(looks)] : []) {
        expect(refused.code).toBe('correction-over-a-departure');
        expect(refused.message).toContain(`the aircraft left: from AAA at ${offBlockAt}`);
        expect(refused.next).toContain('What was missed stays missed');
      }
    }
    expect(refusalOf(() => lookAndCorrect(waits, look, given)).code).toBe('correction-over-a-departure');
  });

  it('earlier, never makes less missed that was missed', () => {
    const hour = fc.integer({ min: 0, max: 100 });
    const tried = { corrected: 0, refused: 0 };
    const from = { base: 'UTC', tzdb: '2026a' };
    fc.assert(
      fc.property(
        fc.constantFrom<Repeat>(
          'each-departure',
          'each-flight-day',
          { every: '3 flights' },
          { every: '2 calendar-days' },
          { every: '9 flight-hours' },
          { afterFirstFlightThenEvery: '4 flight-hours' },
        ),
        fc.uniqueArray(hour, { minLength: 1, maxLength: 8 }),
        fc.array(fc.record({ hour, forFlight: fc.constantFrom('F0', 'F1', undefined) }), {
          minLength: 1,
          maxLength: 3,
        }),
        fc.nat(),
        fc.integer({ min: 1, max: 30 }),
        fc.boolean(),
        (repeat, leaves, signs, which, earlier, isNamed) => {
          const departures = leaves
            .toSorted((one, other) => one - other)
            .map((hours, index) => departure(hoursOn(hours), isNamed ? `F${index}` : null));
          const life = signs
            .toSorted((one, other) => one.hour - other.hour)
            .reduce(
              (before, { hour: doneHour, forFlight }, index) => {
                const doneAt = hoursOn(doneHour);
                const command = { id: `m${index}`, by: signed('tech', doneAt), work, doneAt };
                const more = forFlight === undefined ? {} : { forFlight };
                return proceed(before, signProcedure(before, { ...command, ...more }, context(doneAt)));
              },
              deferredAs({ category: 'C', procedures: [{ ...procedures[0]!, repeat }] }, RECORDED),
            );
          const act = life.procedures[which % life.procedures.length]!;
          const now = hoursOn((Date.parse(act.doneAt) - Date.parse(RECORDED)) / HOUR - earlier);
          const by = signed('tech', T);
          const over = { act: act.id, field: 'doneAt' as const, now, by, flown: departures };
          const missed = (of: DefectLife) => missedOf(of, departures, from);
          if (departures.some(({ leg }) => now <= leg.offBlockAt && leg.offBlockAt < act.doneAt)) {
            tried.refused++;
            const refused = refusalOf(() => askCorrection(life, asked(life, over), context(T)));
            expect(refused.code).toBe('correction-over-a-departure');
          } else {
            tried.corrected++;
            expect(missed(corrected(life, over, context(T)))).toEqual(expect.arrayContaining(missed(life)));
          }
        },
      ),
      { numRuns: 300 },
    );
    expect(Math.min(tried.corrected, tried.refused)).toBeGreaterThan(0);
  });
});

const HOUR = 3_600_000;

const hoursOn = (hours: number): string => new Date(Date.parse(RECORDED) + hours * HOUR).toISOString();

function departure(offBlockAt: string, flight: string | null = null): Departure {
  const leg = { offBlockAt, blockMinutes: 100, flightMinutes: 90, cycles: 1, landings: 1 };
  return { flight, from: 'AAA', flown: true, leg };
}

/** Each departure that the aircraft left without the work: one more is missed with it than up to it. */
function missedOf(life: DefectLife, departures: readonly Departure[], counting: Counting): string[] {
  const missed = (of: readonly Departure[]): number =>
    obligationsOf(life, of, T, counting).reduce(
      (sum, { state, departures: left }) => (state === 'missed' ? sum + left : sum),
      0,
    );
  return departures.flatMap(({ leg }, index) =>
    missed(departures.slice(0, index + 1)) > missed(departures.slice(0, index)) ? [leg.offBlockAt] : [],
  );
}

describe('why something was entered late', () => {
  it('is put right for work and for a write-up that has such a reason, by two people', () => {
    const right = corrected(done, { act: 'm', field: 'lateReason', now: 'The tablet was flat.' });
    expect(right.procedures[0]?.lateReason).toBe('The tablet was flat.');
    const late = writtenUp(RECORDED, { lateReason: 'no signla' });
    const [written] = late.acts;
    const over = { act: written?.id ?? '', field: 'lateReason' as const, now: 'no signal' };
    const reads = corrected(late, over);
    expect(readsNow(reads, { ...over, item: null })).toBe('no signal');
    const prompt = writtenUp(RECORDED);
    const none = asked(prompt, { ...over, act: prompt.acts[0]?.id ?? '' });
    const refused = refusalOf(() => askCorrection(prompt, none, given));
    expect(refused.code).toBe('correction-of-nothing');
    expect(refused.message).toContain('in the write-up, ');
    expect(refused.message).toContain('why it was entered late does not stand there.');
  });
});

describe('what an extension was granted on', () => {
  const open = deferredAs({ category: 'C' }, RECORDED);
  const request = {
    by: actor('asker'),
    requestedAt: T,
    reason: 'held in customs',
    outsideOperatorsControl: true,
    whyNotFixed: 'no part',
    plan: 'fitted on Monday',
  };
  const life = proceed(
    open,
    extendInterval(open, { id: 'x', by: signed('granter', T), request, agreement: 'L-7' }, context(T)),
  );
  const granter = signed('granter', T);

  it.each(['reason', 'whyNotFixed', 'plan', 'agreement'] as const)('%s is put right, and no limit moves', (field) => {
    const right = corrected(life, { act: 'x', field, now: 'otherwise', by: granter }, context(T));
    const [extension] = right.extensions;
    const reads = { ...extension?.request, agreement: extension?.agreement };
    expect(reads).toEqual({ ...request, agreement: 'L-7', [field]: 'otherwise' });
    expect(right.limits).toEqual(life.limits);
  });

  it('is corrected by one who may grant one, and by nobody else', () => {
    const command = asked(life, {
      act: 'x',
      field: 'plan',
      now: 'otherwise',
      by: signed('tech', T, { scope: { privileges: ['defer'] } }),
    });
    expect(refusalOf(() => askCorrection(life, command, context(T))).code).toBe('authorisation-does-not-cover');
  });
});
