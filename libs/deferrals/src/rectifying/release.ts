/**
 * The work is released to service, by somebody whose authorisation covers it at that moment, with what stays open said.
 * With outcome `closed` the life of the defect ends; with `stays-open` it goes on as it was before the work.
 * 145.A.50; 14 CFR 121.709; 66.A.20.
 */
import type { Released } from '../acts.js';
import { decided, type ActRule } from '../act-rule.js';
import { headOf, type Command, type Context } from '../context.js';
import { noCardOpen } from '../cards/no-card-open.js';
import type { DefectLife } from '../defect-life.js';
import { Refusal } from '../refusal.js';
import { givenAt } from '../signing/given-at.js';
import { admitClosingWork } from './admit-closing-work.js';
import { admitOwnWork } from './admit-own-work.js';
import { needWork } from './open-work.js';

export const released: ActRule<'released'> = {
  kind: 'released',
  privilege: 'release',
  admit(life, act) {
    const { defect } = life;
    const work = needWork(life);
    noCardOpen(life);
    if (act.outcome === 'closed') admitClosingWork(life, work);
    else if (act.staysOpen.length === 0) throw new Refusal('stays-open-not-said', { defect });
    if (work.done.some(({ inspectionAsked }) => inspectionAsked) && work.inspected === null) {
      throw new Refusal('inspection-not-done', { defect });
    }
    admitOwnWork(defect, work, act);
  },
  changes: (_, { outcome, by, enteredAt }) => ({
    work: null,
    closed: outcome === 'closed' ? { how: 'rectified and released', at: givenAt(by, enteredAt), by } : null,
  }),
};

export interface Release extends Command {
  outcome: Released['outcome'];
  staysOpen?: string[];
  asMinorTask?: boolean;
}

/** Throws Refusal; see RELEASING_REFUSALS and SIGNING_REFUSALS. */
export function release(life: DefectLife, command: Release, context: Context): Released[] {
  const { outcome, staysOpen, asMinorTask } = command;
  return decided(released, life, {
    kind: 'released',
    ...headOf(command, context),
    defect: life.defect,
    outcome,
    staysOpen: staysOpen ?? [],
    asMinorTask: asMinorTask ?? false,
  });
}
