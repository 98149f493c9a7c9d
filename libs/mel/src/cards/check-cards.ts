/**
 * What a work card must be beyond its shape: steps that can be done in the order they stand, limits that can be kept, and
 * an account of everything it opens, pulls, inhibits or fits. 145.A.48 (everything accounted for).
 */
import { isDay } from '../checks/numbers.js';
import { repeated } from '../checks/names.js';
import type { Path } from '../checks/places.js';
import type { Finding } from '../mel-error.js';
import { accountFindings } from './check-accounts.js';
import type { Card, CardPurpose, CardStep, Measure, StepOf } from './card.js';
import { stepsLeadingTo } from './steps-leading-to.js';
import { needFindings } from './check-needs.js';
import { toolFindings } from './check-tools.js';

const PURPOSES_OF_MEL: readonly CardPurpose[] = ['procedure'];
const PURPOSES_OF_LIBRARY: readonly CardPurpose[] = ['rectification', 'restoration', 'check'];

/** @param of in which kind of file the cards stand */
export const cardFindings = (cards: readonly Card[], of: 'mel' | 'library'): Finding[] => [
  ...repeated(
    cards.map(({ id }, at) => ({ name: id, path: ['cards', at, 'id'] })),
    'the card',
  ),
  ...cards.flatMap((card, at) => [...purposeFindings(card, of, ['cards', at]), ...oneCard(card, ['cards', at])]),
];

function purposeFindings({ purpose }: Card, of: 'mel' | 'library', path: Path): Finding[] {
  const allowed = of === 'mel' ? PURPOSES_OF_MEL : PURPOSES_OF_LIBRARY;
  if (allowed.includes(purpose)) return [];
  const where = of === 'mel' ? 'a MEL file' : 'a library of cards';
  return [{ path: [...path, 'purpose'], reason: `a card for "${purpose}" does not stand in ${where}` }];
}

function oneCard(card: Card, path: Path): Finding[] {
  const { steps, reference } = card;
  return [
    ...(isDay(reference.issuedOn)
      ? []
      : [
          {
            path: [...path, 'reference', 'issuedOn'],
            reason: `"${reference.issuedOn}" is not a day of the calendar`,
          },
        ]),
    ...repeated(
      steps.map(({ id }, at) => ({ name: id, path: [...path, 'steps', at, 'id'] })),
      'within this card the step',
    ),
    ...steps.flatMap((step, at) => stepFindings(card, step, at, [...path, 'steps', at])),
    ...accountFindings(card, path),
  ];
}

function stepFindings(card: Card, step: CardStep, at: number, path: Path): Finding[] {
  return [
    ...(step.after ?? []).flatMap((id, index) => earlier(card, id, at, [...path, 'after', index])),
    ...(step.kind === 'measure' ? limitFindings(step.measure, [...path, 'measure']) : []),
    ...(step.kind === 'inspect' ? inspectFindings(card, step, at, path) : []),
    ...(step.kind === 'run' ? readingFindings(step, path) : []),
    ...toolFindings(card, step, path),
    ...needFindings(step, path),
  ];
}

/** A step waits for steps that stand before it: so no two wait for each other, and the order on paper can be followed. */
function earlier({ steps }: Card, id: string, at: number, path: Path): Finding[] {
  const place = steps.findIndex((one) => one.id === id);
  if (place === -1) return [{ path, reason: `the card has no step "${id}"` }];
  return place < at ? [] : [{ path, reason: `step "${id}" does not stand before this one` }];
}

function limitFindings({ from, to }: Measure, path: Path): Finding[] {
  if (from === undefined && to === undefined) return [{ path, reason: 'gives no limit: neither "from" nor "to"' }];
  if (from === undefined || to === undefined || from <= to) return [];
  return [{ path, reason: `the limits from ${from} to ${to} leave no value` }];
}

function readingFindings({ readings }: StepOf<'run'>, path: Path): Finding[] {
  return [
    ...repeated(
      readings.map(({ id }, index) => ({ name: id, path: [...path, 'readings', index, 'id'] })),
      'within this step the reading',
    ),
    ...readings.flatMap((reading, index) => limitFindings(reading, [...path, 'readings', index])),
  ];
}

/** What is inspected must be done by then; an inspection is not itself inspected. */
function inspectFindings(card: Card, step: StepOf<'inspect'>, at: number, path: Path): Finding[] {
  const done = stepsLeadingTo(card, step);
  return step.of.flatMap((id, index) => {
    const place = [...path, 'of', index];
    const missing = earlier(card, id, at, place);
    if (missing.length > 0) return missing;
    if (card.steps.find((one) => one.id === id)?.kind === 'inspect') {
      return [{ path: place, reason: `step "${id}" is an inspection itself` }];
    }
    return done.has(id)
      ? []
      : [{ path: place, reason: `step "${id}" need not be done before this one: name it in "after"` }];
  });
}
