/** When work was done, why something was entered late, and what an extension was granted on, put right by two people. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Repeat } from '#mel';
import type { DefectLife, ProcedureDone } from '../defect-life.js';
import { signProcedure } from '../deferring/sign-procedure.js';
import { extendInterval } from '../extending/extend.js';
import { actor, context, deferredAs, refusalOf, signed, writtenUp } from '../invented.fixture.js';
import { goodFor } from '../repeating/good-for.js';
import type { Departure } from '../repeating/obligation.js';
import { proceed, replay } from '../replay.js';
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
  const look = { id: 'look', asked: waits.asked[0]?.id ?? '', secondLook: over.by === undefined ? second : LATER };
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

  it('earlier, is good for no departure from then on that it was not good for', () => {
    const repeats: Repeat[] = [
      'once',
      'each-departure',
      'each-flight-day',
      { every: '3 flights' },
      { every: '2 calendar-days' },
      { every: '9 flight-hours' },
    ];
    const at = (hours: number): string => new Date(Date.parse(RECORDED) + hours * 3_600_000).toISOString();
    const hour = fc.integer({ min: 0, max: 200 });
    const counting = { base: 'UTC', tzdb: '2026a' };
    fc.assert(
      fc.property(
        fc.constantFrom(...repeats),
        fc.uniqueArray(hour, { minLength: 1, maxLength: 12 }),
        hour,
        fc.integer({ min: 1, max: 60 }),
        fc.constantFrom('F0', 'F1', null),
        fc.boolean(),
        (repeat, hours, doneHour, earlier, forFlight, isNamed) => {
          const departures = hours
            .toSorted((one, other) => one - other)
            .map((hours, index): Departure => {
              const leg = { offBlockAt: at(hours), blockMinutes: 100, flightMinutes: 90, cycles: 1, landings: 1 };
              return { flight: isNamed ? `F${index}` : null, from: 'AAA', flown: true, leg };
            });
          const signedAt = (doneAt: string): ProcedureDone =>
            ({ doneAt, validUntil: null, forFlight }) as ProcedureDone;
          for (const [index, departure] of departures.entries()) {
            if (departure.leg.offBlockAt < at(doneHour)) continue;
            const good = (doneAt: string) =>
              goodFor(signedAt(doneAt), repeat, departure, departures.slice(0, index), counting).good;
            if (good(at(doneHour - earlier)) === 'yes') expect(good(at(doneHour))).toBe('yes');
          }
        },
      ),
    );
  });
});

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
    expect(refusalOf(() => askCorrection(prompt, none, given)).code).toBe('correction-of-nothing');
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
