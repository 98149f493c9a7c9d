/** What is entered for the next part of a step: right, but for the slip. */
import type { CardStep } from '#mel';
import type { StepAsked } from '../cards/do-step.js';
import { actor } from '../invented.fixture.js';
import { isRegistered, type Ledger, partOf, type Try, usesGauge } from './card-ledger.fixture.js';
import { LATCHES, SEALS } from './card-plan.fixture.js';
import { iso, sign } from './crew.fixture.js';

/** The second person, who signs unless the slip is that nobody does. */
export function secondOf(second: string | null, { slip, second: pen, now }: Try) {
  if (second === null) return {};
  return { second: slip === 'unsigned' ? actor(second) : sign({ ...pen, person: second }, now) };
}

const DAY = 1440;

/** Which gauge, as a step or its beginning is told: its last day of calibration is the day itself, unless it expired. */
export function gaugeOf(ledger: Ledger, step: CardStep, { slip, now }: Try) {
  const part = partOf(ledger, step, slip);
  if (!usesGauge(step) || slip === 'unstated' || part === 'end' || part === 'look') return {};
  const calibratedUntil = iso(now - (slip === 'expired' ? DAY : 0)).slice(0, 10);
  return { used: [{ what: 'gauge', number: 'G-1', calibratedUntil }] };
}

/** What is entered for the next part of a step, right but for the slip. */
export function resultOf(ledger: Ledger, step: CardStep, { slip, number }: Try): StepAsked {
  const off = slip === 'count' ? 1 : 0;
  if (slip === 'kind') return step.kind === 'do' ? { kind: 'waited' } : { kind: 'done' };
  const part = partOf(ledger, step, slip);
  if (part === 'begin')
    return slip === 'value' && step.kind === 'run' ? { kind: 'begun', minutes: 1 } : { kind: 'begun' };
  switch (step.kind) {
    case 'measure':
      return { kind: 'measured', value: slip === 'value' ? 4.1 : 4, unit: 'l' };
    case 'renew':
      return { kind: 'renewed', partNumber: 'S-1', batch: 'B-1', count: SEALS - off };
    case 'wait':
      return { kind: 'waited' };
    case 'run':
      if (part === 'look') return { kind: 'looked', findings: slip === 'value' ? ' ' : 'dry' };
      return { kind: 'ran', readings: [{ id: 'case', value: slip === 'value' ? 91 : 90, unit: 'C' }] };
    case 'out':
      return {
        kind: 'out',
        count: countOf(step.account) - off,
        ...numberOf(step.account, slip === 'number' ? '' : number),
      };
    case 'in':
      return {
        kind: 'in',
        count: countOf(step.account) - off,
        ...numberOf(step.account, slip === 'number' ? `${number}9` : number),
      };
    default:
      return { kind: 'done' };
  }
}

const countOf = (account: string): number => (account === 'latches' ? LATCHES : 1);

const numberOf = (account: string, number: string): { number?: string } => (isRegistered(account) ? { number } : {});
