/**
 * Trying things on the aircraft in a random history, allowed or not: where the model knows a reason against it one of
 * those must be the refusal, and where it knows none the act must be admitted.
 */
import type { Act } from '../acts.js';
import type { DefectLife } from '../defect-life.js';
import { aircraftGates } from '../flying/aircraft-gates.js';
import { mayDispatch } from '../flying/may-dispatch.js';
import { actor, AIRCRAFT } from '../invented.fixture.js';
import { Refusal } from '../refusal.js';
import type { RefusalCode } from '../refusals.js';
import { replay } from '../replay.js';
import { identify } from '../writing-up/identify.js';
import { writeUp } from '../writing-up/write-up.js';
import { given, iso, type RealAircraft } from './aircraft.fixture.js';
import * as m from './model.fixture.js';
import type { Model, ModelDefect } from './model.fixture.js';

/** Told after each command, with the model and the aircraft as they are then. */
export type Watch = (model: Model, real: RealAircraft) => void;

/** A command as fast-check runs it: whether it can be tried at all, and the trying. */
export interface Command {
  check(model: Readonly<Model>): boolean;
  run(model: Model, real: RealAircraft): void;
  toString(): string;
}

export interface Try {
  against: RefusalCode[];
  act: (life: DefectLife) => Act[];
  then: () => void;
}
export type Plan = (model: Model, real: RealAircraft, defect: ModelDefect, index: number) => Try;

const WORKING = ['look', 'finish', 'release'];

/** A command on one defect: of those with open work if it asks for it and there are any, else of all. */
export function on(name: string, pick: number, watch: Watch, plan: Plan): Command {
  const choose = (defects: readonly ModelDefect[]): number => {
    const working = defects.flatMap(({ work: open }, index) => (open === null ? [] : [index]));
    const wanted = WORKING.includes(name) && working.length > 0 ? working : [...defects.keys()];
    return wanted[pick % wanted.length] ?? 0;
  };
  return {
    check: ({ defects }) => defects.length > 0,
    run(model, real) {
      const index = choose(model.defects);
      const defect = model.defects[index] as ModelDefect;
      const { against, act, then } = plan(model, real, defect, index);
      const closed: RefusalCode[] = defect.closed && name !== 'correct' ? ['already-closed'] : [];
      attempt([...against, ...closed], () => {
        real.take(index, act(real.life(index)));
        then();
      });
      watch(model, real);
    },
    toString: () => `${name}(${pick})`,
  };
}

function attempt(against: readonly RefusalCode[], act: () => void): void {
  try {
    act();
  } catch (error) {
    if (error instanceof Refusal && against.includes(error.code)) return;
    throw error;
  }
  if (against.length > 0) throw new Error(`It was admitted, and should be refused: ${against.join(', ')}`);
}

export const wait = (minutes: number, watch: Watch): Command => ({
  check: () => true,
  run(model, real) {
    model.minute += minutes;
    watch(model, real);
  },
  toString: () => `wait(${minutes})`,
});

export const write = (late: number, reason: boolean, unit: '1' | '2', watch: Watch): Command => ({
  check: ({ defects }) => defects.length < 3,
  run(model, real) {
    const recorded = model.minute - late;
    const defect = `D${model.defects.length}`;
    const against: RefusalCode[] = [
      ...(late < 0 ? (['recorded-in-the-future'] as const) : []),
      ...(late > 60 && !reason ? (['late-entry-needs-reason'] as const) : []),
    ];
    attempt(against, () => {
      const said = { id: real.id(), defect, by: actor('crew'), aircraft: AIRCRAFT, origin: 'crew' as const };
      const times = { recordedAt: iso(recorded), ...(reason ? { lateReason: 'no signal' } : {}) };
      const command = { ...said, ...times, description: 'it fails' };
      real.seen.push({ lives: [replay(writeUp(null, command, given(model, real, -1)))] });
      model.defects.push({
        recorded,
        unit,
        row: null,
        limits: [],
        usedA: false,
        extended: false,
        flights: 0,
        left: [],
        altered: false,
        work: null,
        closed: false,
      });
      const index = real.seen.length - 1;
      const item = { entry: '22-10-01', subEntry: 'all', units: [unit] };
      const named = { id: real.id(), by: actor('crew'), item, installed: ['1', '2'] };
      real.take(index, identify(real.life(index), named, given(model, real, index)));
    });
    watch(model, real);
  },
  toString: () => `write(${late}, ${reason}, ${unit})`,
});

export const fly = (watch: Watch): Command => ({
  check: () => true,
  run(model, real) {
    const { unanswered, openWork, orphans } = aircraftGates(real.lives, [], [], iso(model.minute));
    const flight = { id: 'F', offBlockAt: iso(model.minute), onBlockAt: iso(model.minute + 90) };
    const each = real.lives.map((life, index) =>
      mayDispatch(life, flight, { used: { flights: model.defects[index]?.flights ?? 0 } }),
    );
    const may = [...unanswered, ...openWork, ...orphans].length === 0 && each.every((one) => one.may);
    if (may !== m.mayLeave(model)) throw new Error(`It may ${may ? '' : 'not '}leave, and the model says otherwise.`);
    if (may) for (const defect of model.defects) if (!defect.closed) defect.flights += 1;
    watch(model, real);
  },
  toString: () => 'fly',
});
