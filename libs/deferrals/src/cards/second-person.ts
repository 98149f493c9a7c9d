/**
 * A step that needs two people is not done alone, and not on the word of one of them: the second person signs for himself,
 * with what the card asks of him. Manual operation of a start valve asks for one on the ground and one on the flight deck
 * (common practice, no source).
 */
import type { CardStep, Need } from '#mel';
import type { DefectLife } from '../defect-life.js';
import { isSignature, type Signature } from '../people.js';
import { Refusal } from '../refusal.js';
import { admitSignature } from '../signing/admit-signature.js';
import { needText } from '../writing-up/need-text.js';
import type { CardInspected, CardStepped } from './card-acts.js';
import type { CardWork } from './card-life.js';
import { onlyEnds, stepInWords } from './card-work.js';

/** What the card asks of the second person of a step; undefined where it needs none. */
export const secondNeeded = ({ needs = [] }: Pick<CardStep, 'needs'>): Need | undefined =>
  needs.find(({ kind }) => kind === 'second-person');

/** Throws Refusal. A wait or a run is signed by the second person as it begins. */
export function admitSecondPerson(life: DefectLife, work: CardWork, step: CardStep, act: CardStepped): void {
  const { by, second, result, enteredAt } = act;
  const named = stepInWords(work.started.card, step);
  const asked = secondNeeded(step);
  if (second === undefined) {
    if (asked === undefined || onlyEnds(result)) return;
    throw new Refusal('second-person-missing', { step: named, what: asked.what, name: by.name });
  }
  needText('the identity of the second person', second.person);
  needText('the name of the second person', second.name);
  if (second.person === by.person) throw new Refusal('second-person-same', { step: named, name: by.name });
  if (!isSignature(second)) throw new Refusal('second-person-unsigned', { step: named, second: second.name });
  const job = { defect: life.defect, acts: life.acts };
  const signing = { aircraft: life.aircraft, enteredAt, act: 'card-second', job };
  admitSignature(second, asked?.privilege ?? null, signing);
  admitLicence(named, asked, second);
}

function admitLicence(step: string, asked: Need | undefined, { name, authorisation }: Signature): void {
  const { licence } = asked ?? {};
  const { licenceCategories: held } = authorisation;
  if (licence === undefined || licence.some((one) => held.includes(one))) return;
  const facts = { step, asked: licence.join(' or '), name, held: held.length > 0 ? held : 'none' };
  throw new Refusal('second-person-needs-licence', facts);
}

/** Whether a person had a hand in what was done: as the one who did it, or as the second. */
export const hadAHand = (act: CardStepped | CardInspected, person: string): boolean =>
  act.by.person === person || (act.kind === 'card-stepped' && act.second?.person === person);
