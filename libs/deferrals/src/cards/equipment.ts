/**
 * Equipment that a step uses is named by its number, and what the card wants calibrated was in calibration on the
 * operator's day of the step. 145.A.40(b): tools and equipment are controlled and calibrated (from memory).
 */
import { isDay, statedNeeds, type CardStep, type Need } from '#mel';
import type { DefectLife } from '../defect-life.js';
import { Refusal } from '../refusal.js';
import type { CardStepped, EquipmentUsed } from './card-acts.js';
import type { CardWork } from './card-life.js';
import { onlyEnds, stepInWords } from './card-work.js';
import { outOf } from './counted.js';

/** What is told of a piece of equipment; the rule adds the day. */
export type EquipmentStated = Omit<EquipmentUsed, 'usedOn' | 'calibratedUntil'> & { calibratedUntil?: string };

/** Throws Refusal. A wait or a run states it as it begins. */
export function admitEquipment(
  life: Pick<DefectLife, 'left'>,
  work: CardWork,
  step: CardStep,
  { used = [], result }: CardStepped,
): void {
  const named = stepInWords(work.started.card, step);
  const asked = onlyEnds(result) ? [] : statedNeeds(step);
  const strange = used.find((one, at) => !asked.some(({ what }) => what === one.what) || isTwice(used, at));
  if (strange) {
    const facts = { step: named, asked: 'state each piece of equipment that the card names, once' };
    throw new Refusal('step-done-otherwise', { ...facts, given: strange.what });
  }
  for (const need of asked) {
    admitOne(
      named,
      need,
      used.find(({ what }) => what === need.what),
    );
    admitIssued(life, work, named, need, used);
  }
}

const isTwice = (used: readonly EquipmentUsed[], at: number): boolean =>
  used.findIndex(({ what }) => what === used[at]?.what) < at;

function admitOne(step: string, { what, calibrated = false }: Need, one: EquipmentUsed | undefined): void {
  const asked = calibrated ? 'its number, and until when it is calibrated' : 'its number';
  if (one === undefined || one.number.trim() === '') throw new Refusal('equipment-not-stated', { step, what, asked });
  if (!calibrated) return;
  const { number, calibratedUntil: until, usedOn } = one;
  if (until === null || !isDay(until)) throw new Refusal('equipment-not-stated', { step, what, asked });
  if (until < usedOn) throw new Refusal('equipment-out-of-calibration', { step, what, number, until, usedOn });
}

/** A tool is the one that the card issued. */
function admitIssued(
  life: Pick<DefectLife, 'left'>,
  work: CardWork,
  step: string,
  { account: id, what }: Need,
  used: readonly EquipmentUsed[],
): void {
  const account = work.started.card.accounts?.find((one) => one.id === id);
  if (account === undefined) return;
  const issued = outOf(life, work, account).map(({ tag }) => tag);
  const given = used.find((one) => one.what === what)?.number ?? '';
  if (!issued.includes(given)) throw new Refusal('tool-not-issued', { step, what, given, issued });
}
