import type { ActOf, EquipmentUsed, StepResult } from '#deferrals';
import { referenceInWords } from '#mel';

export type CardActKind = 'card-started' | 'card-stepped' | 'card-inspected' | 'card-signed' | 'card-stopped';

/** What an act on a work card did, as one line of history reads. */
export function wordsOfCardAct(act: ActOf<CardActKind>): string {
  switch (act.kind) {
    case 'card-started':
      return `Work card started: ${act.card.title} (${referenceInWords(act.card.reference)})`;
    case 'card-stepped':
      return [
        `Step ${act.step} ${wordsOfResult(act.result)}`,
        ...(act.second ? [`with ${act.second.name}, who signed`] : []),
        ...(act.used ?? []).map((one) => `by ${wordsOfUsed(one)}`),
      ].join(', ');
    case 'card-inspected':
      return `Step ${act.step} inspected independently: ${act.findings}`;
    case 'card-signed':
      return 'Work card signed: every step done, everything accounted for';
    case 'card-stopped':
      return `Work card stopped: ${act.reason}`;
  }
}

/** "pressure gauge G-7, calibrated until 2026-03-01" */
export const wordsOfUsed = ({ what, number, calibratedUntil }: EquipmentUsed): string =>
  `${what} ${number}${calibratedUntil === null ? '' : `, calibrated until ${calibratedUntil}`}`;

export function wordsOfResult(result: StepResult): string {
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
      return `ran its whole time: ${result.readings.map(({ id, value, unit }) => `${id} ${value} ${unit}`).join(', ')}`;
    case 'looked':
      return `looked afterwards: ${result.findings}`;
    case 'out':
      return `counted out ${result.count}${result.item ? ` (${result.item.tag})` : ''}`;
    case 'in':
      return `counted in ${result.count}${result.number === null ? '' : ` (${result.number})`}`;
  }
}
