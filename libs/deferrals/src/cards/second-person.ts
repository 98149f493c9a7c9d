/**
 * A step that needs two people is not done alone: whoever does it names who is there with them. Manual operation of a start
 * valve asks for one on the ground and one on the flight deck (common practice, no source).
 */
import type { CardStep } from '#mel';
import { Refusal } from '../refusal.js';
import { needText } from '../writing-up/need-text.js';
import type { CardInspected, CardStepped } from './card-acts.js';

/** Throws Refusal. A wait or a run names the person as it begins. */
export function admitSecondPerson({ id, needs = [] }: CardStep, { by, second, result }: CardStepped): void {
  const asked = needs.find(({ kind }) => kind === 'second-person');
  if (second !== undefined) {
    needText('the identity of the second person', second.person);
    needText('the name of the second person', second.name);
    if (second.person === by.person) throw new Refusal('second-person-same', { step: id, name: by.name });
    return;
  }
  if (asked === undefined || ENDS.includes(result.kind)) return;
  throw new Refusal('second-person-missing', { step: id, what: asked.what, name: by.name });
}

/** What ends a step that was begun with its second person. */
const ENDS: readonly CardStepped['result']['kind'][] = ['waited', 'ran', 'looked'];

/** Whether a person had a hand in what was done: as the one who did it, or as the second. */
export const hadAHand = (act: CardStepped | CardInspected, person: string): boolean =>
  act.by.person === person || (act.kind === 'card-stepped' && act.second?.person === person);
