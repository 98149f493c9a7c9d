/**
 * Thousands of random histories over several defects of one aircraft. After every act, allowed or refused, one invariant
 * is checked on everything that there is; and every answer of the lib is held against a tiny second account of the rules.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Act } from '../acts.js';
import type { DefectLife } from '../defect-life.js';
import { aircraftGates } from '../flying/aircraft-gates.js';
import { replay } from '../replay.js';
import { deadlineOf, earliestEnd } from '../signed-limit.js';
import { standing } from '../standing.js';
import { iso, RealAircraft } from './aircraft.fixture.js';
import { DAY, dayOf, lastDayOf, type Model, type ModelDefect, type RowName, type Who } from './model.fixture.js';
import * as p from './plans.fixture.js';
import { fly, on, wait, write, type Command, type Plan, type Watch } from './trying.fixture.js';

const HISTORIES = 130;

/** An aircraft with two write-ups, one of each unit, and the model of it. */
function twoWriteUps(): { model: Model; real: RealAircraft } {
  const start = { model: { minute: 8 * DAY, defects: [] }, real: new RealAircraft() };
  for (const unit of ['1', '2'] as const) void write(0, true, unit, () => {}).run(start.model, start.real);
  return start;
}

/** Arbitraries for every command; `watch` is told after each. Valid ones are favoured, so that every act is reached. */
function commandsWatchedBy(watch: Watch): fc.Arbitrary<Command>[] {
  const who = fc.constantFrom<Who>('first', 'first', 'second', 'control', 'mechanic', 'trainee', 'leaver');
  const [first, second, control] = (['first', 'second', 'control'] as const).map((name) => fc.constant<Who>(name));
  if (!first || !second || !control) throw new Error('three people were named');
  const row = fc.constantFrom<RowName>('B', 'C', 'C', 'D', 'A days', 'A flights', 'pair', 'unit 2 only');
  const yes = fc.boolean();
  const mostly = fc.constantFrom(true, true, true, false);
  const defect = fc.nat(2);
  const minutes = fc.oneof(fc.integer({ min: 1, max: 120 }), fc.integer({ min: 1, max: 3 * DAY }));
  const late = fc.oneof(fc.integer({ min: -5, max: 90 }), fc.integer({ min: 0, max: 5 * DAY }));
  const looks = fc.constantFrom<p.Look>('test', 'test', 'bad test', 'inspect', 'restore', 'restore', 'go over');
  const one = <Args extends unknown[]>(
    name: string,
    plan: (...args: Args) => Plan,
    ...args: { [Index in keyof Args]: fc.Arbitrary<Args[Index]> }
  ): fc.Arbitrary<Command> =>
    fc.tuple(defect, fc.tuple<Args>(...args)).map(([index, chosen]) => on(name, index, watch, plan(...chosen)));
  return [
    minutes.map((some) => wait(some, watch)),
    fc.tuple(late, mostly, fc.constantFrom('1', '2')).map((args) => write(...args, watch)),
    one('write again', () => p.writeAgain),
    one('defer', p.deferBy, fc.option(row, { freq: 12 }), who),
    one('defer', p.deferBy, row, first),
    one('change row', p.change, row, who, fc.option(defect, { freq: 2 })),
    one('change row', p.change, row, control, defect),
    one('extend', p.extendBy, who, who, mostly),
    one('extend', p.extendBy, first, control, mostly),
    one('leave', p.leave, who),
    one('undo', p.undo, who),
    one('rectify', p.work, who, mostly, yes, yes),
    one('look', p.look, looks, who),
    one('look', p.look, looks, second),
    one('finish', () => p.finish),
    one('finish', () => p.finish),
    one('release', p.out, who, mostly),
    one('answer', p.answer, yes, who),
    one('carry', p.carry, fc.constantFrom('re-enter', 'hand over', 'swap')),
    one('correct', p.correctTime, fc.integer({ min: -2 * DAY, max: DAY }), who),
    fc.constant(fly(watch)),
  ];
}

const RUNS = { numRuns: HISTORIES, unbiased: true };

/** Random histories of one aircraft, with somebody watching after every command. */
const histories = (watch: Watch): fc.IProperty<unknown> =>
  fc.property(fc.commands(commandsWatchedBy(watch), { maxCommands: 60, size: 'max' }), (commands) => {
    fc.modelRun(twoWriteUps, commands);
  });

/** Checks each defect beside its model. */
const each =
  (check: (life: DefectLife, defect: ModelDefect, model: Model) => void): Watch =>
  (model, real) =>
    real.lives.forEach((life, index) => check(life, model.defects[index] as ModelDefect, model));

const milliseconds = (written: string): number => Date.parse(written);

/** Each step of a life: what it was before an act, the act, and what it was after. */
function steps(lives: readonly DefectLife[]): { before: DefectLife; act: Act; after: DefectLife }[] {
  return lives.slice(1).map((after, index) => ({
    before: lives[index] as DefectLife,
    act: after.acts.at(-1) as Act,
    after,
  }));
}

const eachStep =
  (check: (step: { before: DefectLife; act: Act; after: DefectLife }) => void): Watch =>
  (_, real) =>
    real.seen.forEach(({ lives }) => steps(lives.slice(-2)).forEach(check));

describe('random histories of an aircraft', () => {
  it('Every act is admitted or refused, and every flight may leave or not, as the second account says', () => {
    fc.assert(
      histories(() => {}),
      { ...RUNS, numRuns: 8 * HISTORIES },
    );
  });

  it('A life rebuilt from its acts is the life', () => {
    fc.assert(histories(each((life) => expect(replay(life.acts)).toEqual(life))), RUNS);
  });

  it('Any beginning of a history, played again, gives what was then', () => {
    fc.assert(
      histories((model, real) =>
        real.seen.forEach(({ lives }) => {
          const some = lives[model.minute % lives.length] as DefectLife;
          expect(replay((lives.at(-1) as DefectLife).acts.slice(0, some.acts.length))).toEqual(some);
        }),
      ),
      RUNS,
    );
  });

  it('A write-up without an answer, and open work, keep the aircraft on the ground', () => {
    fc.assert(
      histories((model, real) => {
        const names = (wanted: (defect: ModelDefect) => boolean) =>
          model.defects.flatMap((defect, index) => (wanted(defect) ? [`D${index}: it fails`] : []));
        expect(aircraftGates(real.lives, [], [], iso(model.minute))).toEqual({
          unanswered: names(({ closed, row, work }) => !closed && row === null && work === null),
          openWork: names(({ closed, work }) => !closed && work !== null),
          orphans: [],
        });
      }),
      RUNS,
    );
  });

  it('Every deferral stands on a basis and on a signature that may defer', () => {
    fc.assert(
      histories(
        each(({ deferral, bases }, { row }) => {
          expect(deferral?.basis.kind === 'mel-row' ? deferral.basis.row : null).toBe(row);
          if (deferral === null) return;
          expect(bases.at(-1)).toEqual(deferral.basis);
          expect(deferral.signedBy.authorisation.privileges).toContain('defer');
        }),
      ),
      RUNS,
    );
  });

  it('The last day is the day in the log plus the interval, and nothing else moves it but one extension', () => {
    fc.assert(
      histories(
        each((life, defect) => {
          const last = lastDayOf(defect);
          expect(deadlineOf(life.limits).lastDay).toBe(last === null ? null : iso(last * DAY).slice(0, 10));
        }),
      ),
      RUNS,
    );
  });

  it('No act moves a deadline later, but an extension or the end of the cause of a stricter row', () => {
    fc.assert(
      histories(
        eachStep(({ before, act, after }) => {
          const [old, next] = [earliestEnd(before.limits), earliestEnd(after.limits)];
          if (old === null) return;
          const later = next === null || milliseconds(next) > milliseconds(old);
          const mayMove = act.kind === 'extended' || (act.kind === 'row-changed' && act.causeClosed !== null);
          expect(later && !mayMove, `${act.kind} moved ${old} to ${next}`).toBe(false);
        }),
      ),
      RUNS,
    );
  });

  it('The log time never moves forward, and the write-up stays as it was written', () => {
    fc.assert(
      histories(
        eachStep(({ before, after }) => {
          expect(milliseconds(after.recordedAt)).toBeLessThanOrEqual(milliseconds(before.recordedAt));
          expect(after.acts[0]).toEqual(before.acts[0]);
        }),
      ),
      RUNS,
    );
  });

  it('The three times of an act are in order, and a late write-up has its reason', () => {
    fc.assert(
      histories(
        each(({ acts }) => {
          for (const { recordedAt, enteredAt, lateReason } of acts) {
            const late = milliseconds(enteredAt) - milliseconds(recordedAt);
            expect(late).toBeGreaterThanOrEqual(0);
            expect(late <= 60 * 60_000 || lateReason !== undefined).toBe(true);
          }
        }),
      ),
      RUNS,
    );
  });

  it('The operator extends once, never category A, before the end, and never on the word of the one who asks', () => {
    fc.assert(
      histories(
        eachStep(({ before, act, after }) => {
          expect(after.extensions.length).toBeLessThanOrEqual(1);
          if (act.kind !== 'extended') return;
          expect(milliseconds(act.enteredAt)).toBeLessThan(milliseconds(earliestEnd(before.limits) ?? ''));
          expect(before.bases.some((basis) => basis.kind === 'mel-row' && basis.category === 'A')).toBe(false);
          expect(act.request.by.person).not.toBe(act.by.person);
          expect(act.request.outsideOperatorsControl).toBe(true);
        }),
      ),
      RUNS,
    );
  });

  it('Nothing of a closed defect is left on the aircraft', () => {
    fc.assert(
      histories(
        each(({ closed, left }, { left: expected }) => {
          expect(left.map(({ id }) => id)).toEqual(expected);
          if (closed !== null) expect(left).toEqual([]);
        }),
      ),
      RUNS,
    );
  });

  it('Every release is signed by somebody who may release then, and the performer never inspects', () => {
    fc.assert(
      histories(
        eachStep(({ before, act }) => {
          if (act.kind !== 'released' && act.kind !== 'inspected') return;
          const performers = before.work?.done.map(({ by }) => by.person) ?? [];
          const { person, authorisation } = act.by;
          expect(authorisation.person).toBe(person);
          expect(authorisation.privileges).toContain(act.kind === 'released' ? 'release' : 'inspect');
          expect(milliseconds(authorisation.revokedAt ?? '2999-01-01T00:00Z')).toBeGreaterThan(
            milliseconds(act.enteredAt),
          );
          if (act.kind === 'inspected') expect(performers).not.toContain(person);
          else if (person === 'mechanic') expect(new Set(performers)).toEqual(new Set(['mechanic']));
        }),
      ),
      RUNS,
    );
  });

  it('Standing is worked out anew: open, answered and overdue as the days say', () => {
    fc.assert(
      histories(
        each((life, { closed, row, limits, flights }, { minute }) => {
          const now = standing(life, iso(minute), { flights });
          const over = limits.some(
            (limit) =>
              (limit.lastDay !== null && dayOf(minute) > limit.lastDay) ||
              (limit.flights !== null && flights >= limit.flights),
          );
          const expected = { open: !closed, answered: closed || row !== null, overdue: !closed && over };
          expect({ open: now.open, answered: now.answered, overdue: now.overdue }).toEqual(expected);
        }),
      ),
      RUNS,
    );
  });

  it('reach every kind of act they are made for, often enough to mean something', () => {
    const admitted = new Map<string, number>();
    const ends = new WeakSet<RealAircraft>();
    const aircraft: RealAircraft[] = [];
    const remember: Watch = (_, real) => {
      if (ends.has(real)) return;
      ends.add(real);
      aircraft.push(real);
    };
    fc.assert(histories(remember), { ...RUNS, seed: 20_260_126 });
    for (const real of aircraft) {
      for (const [kind, times] of real.admitted) admitted.set(kind, (admitted.get(kind) ?? 0) + times);
    }
    const rare = ['deferred', 'row-changed', 'extended', 'undone', 'inspected', 'restored', 'released', 'corrected'];
    for (const kind of rare) expect([kind, (admitted.get(kind) ?? 0) > 12]).toEqual([kind, true]);
  });
});
