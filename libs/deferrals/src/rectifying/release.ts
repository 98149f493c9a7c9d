/**
 * The work is released to service, by somebody whose authorisation covers it at that moment, with what stays open said.
 * With outcome `closed` the life of the defect ends; with `stays-open` it goes on as it was before the work.
 * 145.A.50; 14 CFR 121.709; 66.A.20.
 */
import type { Released } from '../acts.js';
import { decided, type ActRule } from '../act-rule.js';
import { headOf, type Command, type Context } from '../context.js';
import { noCardOpen } from '../cards/no-card-open.js';
import { stoppedHalfWorked } from '../cards/stopped-half-worked.js';
import type { DefectLife } from '../defect-life.js';
import { Refusal } from '../refusal.js';
import { givenAt } from '../signing/given-at.js';
import { admitClosingWork } from './admit-closing-work.js';
import { admitOwnWork } from './admit-own-work.js';
import { admitRemoval } from '../leaving/admit-removal.js';
import { listAsksInspection } from './inspection-asked.js';
import { needWork } from './open-work.js';

export const released: ActRule<'released'> = {
  kind: 'released',
  privilege: 'release',
  admit(life, act) {
    const { defect } = life;
    const work = needWork(life);
    noCardOpen(life);
    if (act.outcome === 'closed') admitClosingWork(life, work);
    else admitOpenWork(life, act);
    if (work.verified === null) throw new Refusal('not-generally-verified', { defect, missing: NOT_LOOKED });
    if (work.done.some(({ inspectionAsked }) => inspectionAsked) && work.inspected === null) {
      throw new Refusal('inspection-not-done', { defect });
    }
    admitOwnWork(life, act);
  },
  changes: (_, { outcome, by, enteredAt }) => ({
    work: null,
    closed: outcome === 'closed' ? { how: 'rectified and released', at: givenAt(by, enteredAt), by } : null,
  }),
};

const NOT_LOOKED = ['tools accounted for', 'panels and cowls closed', 'the register checked against the aircraft'];

/** What stays open is said, and what the work removed is put back unless the row lets it be missing. 145.A.50(e). */
function admitOpenWork(life: DefectLife, { staysOpen }: Released): void {
  const { defect, deferral, left } = life;
  if (staysOpen.every((line) => line.trim() === '')) throw new Refusal('stays-open-not-said', { defect });
  const unsaid = stoppedHalfWorked(life)
    .map(({ started }) => started.card.title)
    .filter((title) => !staysOpen.some((line) => line.includes(title)));
  if (unsaid.length > 0) throw new Refusal('stopped-card-not-said', { defect, cards: unsaid });
  admitRemoval(defect, deferral?.basis ?? null, left);
}

export interface Release extends Command {
  outcome: Released['outcome'];
  staysOpen?: string[];
  asMinorTask?: boolean;
}

/** Throws Refusal; see RELEASING_REFUSALS and SIGNING_REFUSALS. */
export function release(life: DefectLife, command: Release, context: Context): Released[] {
  const { outcome, staysOpen, asMinorTask } = command;
  const line = listAsksInspection(life, context.settings);
  if (line !== null && life.work !== null && life.work.inspected === null) {
    throw new Refusal('inspection-on-the-list', { defect: life.defect, line });
  }
  return decided(released, life, {
    kind: 'released',
    ...headOf(command, context),
    defect: life.defect,
    outcome,
    staysOpen: staysOpen ?? [],
    asMinorTask: asMinorTask ?? false,
  });
}
