/**
 * How a defect stands at an instant. Recomputed whole from its history each time, never stored and patched.
 *
 * What is left is shown, never maximised: the defect is to be rectified as soon as practicable (M.A.403(c)).
 */
import { whatIsLeft, type CountingSettings, type Used, type WhatIsLeft } from '#intervals';
import { basisInWords } from './basis.js';
import { withDone } from './deferring/done-within.js';
import { readingIntervals } from './deferring/reading-intervals.js';
import { workOwed } from './flying/work-owed.js';
import type { DefectLife } from './defect-life.js';
import { thingsInWords } from './leaving/left-items.js';
import type { Reason } from './refusal.js';
import { deadlineOf, isOver, type Deadline } from './signed-limit.js';

export type State = 'unanswered' | 'open under deferral' | 'being rectified' | 'rectified, not released' | 'closed';

export interface Standing {
  defect: string;
  at: string;
  state: State;
  /** True once it is deferred or closed. */
  answered: boolean;
  open: boolean;
  /** In words: "MEL 32-42-01 row 1 (category C)". */
  basis: string | null;
  deadline: Deadline | null;
  /** One for each signed limit that has a clock. */
  left: WhatIsLeft[];
  /** Null when a counter that matters is not known. */
  overdue: boolean | null;
  /** How often it was extended. */
  extended: number;
  /** Procedures and the placard of the basis that were never done, or are no longer in place. */
  owed: Reason[];
  leftOnTheAircraft: string[];
}

/** `used` is what was used up to `at`; absent counters are not known. Throws Refusal for an `at` before the record. */
export function standing(
  life: DefectLife,
  at: string,
  used: Used = {},
  counting: Partial<CountingSettings> = {},
): Standing {
  const { defect, deferral, limits, closed } = life;
  const left = limits.flatMap(({ clock }) =>
    clock === null ? [] : [readingIntervals(() => whatIsLeft(clock, at, withDone(used, life), counting))],
  );
  return {
    defect,
    at,
    state: stateOf(life),
    answered: closed !== null || deferral !== null,
    open: closed === null,
    basis: deferral === null ? null : basisInWords(deferral.basis),
    deadline: deferral === null ? null : deadlineOf(limits),
    left,
    overdue: closed === null ? overdue(life, left, at) : false,
    extended: life.extensions.length,
    owed: closed === null ? workOwed(life) : [],
    leftOnTheAircraft: life.left.length === 0 ? [] : thingsInWords(life.left),
  };
}

export function stateOf({ closed, work, deferral }: DefectLife): State {
  if (closed !== null) return 'closed';
  if (work !== null) return work.done.at(-1)?.complete === true ? 'rectified, not released' : 'being rectified';
  return deferral === null ? 'unanswered' : 'open under deferral';
}

function overdue({ limits }: DefectLife, left: readonly WhatIsLeft[], at: string): boolean | null {
  if (isOver(limits, at) || left.some((one) => one.isOver === true)) return true;
  return left.some((one) => one.isOver === null) ? null : false;
}
