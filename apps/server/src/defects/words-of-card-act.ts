import {
  type Act,
  type ActOf,
  type Actor,
  type EquipmentUsed,
  isSignature,
  type Signature,
  stepInFull,
  type StepResult,
} from '#deferrals';
import { type Card, type CardStep, referenceInWords } from '#mel';

export type CardActKind = 'card-started' | 'card-stepped' | 'card-inspected' | 'card-signed' | 'card-stopped';

/** What an act on a work card did, as one line of history reads. @param acts among which its card was started */
export function wordsOfCardAct(act: ActOf<CardActKind>, acts: readonly Act[]): string {
  switch (act.kind) {
    case 'card-started':
      return `Work card started: ${act.card.title} (${referenceInWords(act.card.reference)})`;
    case 'card-stepped':
      return [
        `${stepWords(act, acts)}: ${wordsOfResult(act.result, stepOf(act, acts)?.step)}`,
        ...(act.second ? [`with ${secondInHistory(act.second)}`] : []),
        ...(act.used ?? []).map((one) => `by ${wordsOfUsed(one)}`),
      ].join(', ');
    case 'card-inspected':
      return `${stepWords(act, acts)}: inspected independently: ${act.findings}`;
    case 'card-signed':
      return 'Work card signed: every step done, everything accounted for';
    case 'card-stopped':
      return `Work card stopped: ${act.reason}`;
  }
}

type StepAct = ActOf<'card-stepped' | 'card-inspected'>;

/** `Step 6 "Let it cool."` as its card says it; by its id where the card is not among the acts. */
function stepWords(act: StepAct, acts: readonly Act[]): string {
  const found = stepOf(act, acts);
  return `Step ${found ? stepInFull(found.card, found.step) : act.step}`;
}

function stepOf({ work, step }: StepAct, acts: readonly Act[]): { card: Card; step: CardStep } | undefined {
  const started = acts.find((one) => one.kind === 'card-started' && one.id === work);
  if (started?.kind !== 'card-started') return undefined;
  const found = started.card.steps.find(({ id }) => id === step);
  return found && { card: started.card, step: found };
}

/** In records from before a second person signed, somebody was only named. */
export const secondInHistory = (second: Actor | Signature): string =>
  isSignature(second) ? `${second.name}, who signed` : second.name;

/** "pressure gauge G-7, calibrated until 2026-03-01" */
export const wordsOfUsed = ({ what, number, calibratedUntil }: EquipmentUsed): string =>
  `${what} ${number}${calibratedUntil === null ? '' : `, calibrated until ${calibratedUntil}`}`;

/** @param step names what was read */
export function wordsOfResult(result: StepResult, step: CardStep | undefined): string {
  switch (result.kind) {
    case 'done':
      return 'done';
    case 'measured':
      return `read ${result.value} ${result.unit}`;
    case 'renewed':
      return `renewed ${result.count} of ${result.partNumber}, batch ${result.batch}${result.certificate ? `, certificate ${result.certificate}` : ''}`;
    case 'begun':
      return `begun, to last ${result.minutes} min`;
    case 'waited':
      return 'waited its whole time';
    case 'ran':
      return `ran its whole time: ${result.readings.map((read) => wordsOfReading(read, step)).join(', ')}`;
    case 'looked':
      return `looked afterwards: ${result.findings}`;
    case 'out':
      return `counted out ${result.count}${result.item ? ` (${result.item.tag})` : ''}`;
    case 'in':
      return `counted in ${result.count}${result.number === null ? '' : ` (${result.number})`}`;
  }
}

type Reading = Extract<StepResult, { kind: 'ran' }>['readings'][number];

/** "system pressure 3000 psi" */
function wordsOfReading({ id, value, unit }: Reading, step: CardStep | undefined): string {
  const asked = step?.kind === 'run' ? step.readings.find((one) => one.id === id) : undefined;
  return `${asked?.what ?? id} ${value} ${unit}`;
}
