import type { Delay, MovementElement, TimePair } from './elements/element.js';
import type { DatedMessage } from './dated-message.js';

/** What one message says about one movement, with its instants in minutes. */
interface Statement {
  message: DatedMessage;
}

/** AD, with RR where the aircraft came back to the ramp. */
export interface Departure extends Statement {
  offBlock: number | null;
  airborne: number | null;
  rampReturn: number | null;
  /** Off-block, or airborne where that was not sent. */
  start: number;
}

/** AA at the airport of arrival, FR at the airport of departure. */
export interface Landing extends Statement {
  touchDown: number | null;
  onBlock: number | null;
  /** Touch-down, or on-block where that was not sent. */
  end: number;
}

/** RR in a message of its own. */
export interface RampReturn extends Statement {
  end: number;
}

export function pairOf(message: DatedMessage, kind: 'AD' | 'AA' | 'FR'): TimePair | null {
  const element = message.elements.find((one) => one.kind === kind);
  return element && 'times' in element ? element.times : null;
}

export function elementOf<K extends MovementElement['kind']>(message: DatedMessage, kind: K) {
  return message.elements.find((one): one is Extract<MovementElement, { kind: K }> => one.kind === kind) ?? null;
}

/** Where a departure or a diversion is bound for. */
export function destinationOf(message: DatedMessage): string | null {
  return elementOf(message, 'EA')?.airport ?? null;
}

export function delaysOf(message: DatedMessage): Delay[] {
  return message.elements.flatMap((element) => ('delays' in element ? element.delays : []));
}

/**
 * Which of two statements about the same thing counts: a correction before anything else, then the one received later.
 * Sorts the one that counts to the front; the text decides where all else is equal, so that order never does.
 */
export function byWeight(one: Statement, other: Statement): number {
  const [a, b] = [one.message, other.message];
  if (a.correction !== b.correction) return a.correction ? -1 : 1;
  return -byArrival(one, other);
}

/** In the order of receipt. */
export function byArrival({ message: a }: Statement, { message: b }: Statement): number {
  return a.receipt.milliseconds - b.receipt.milliseconds || (a.text < b.text ? -1 : Number(a.text > b.text));
}

/** Whether a correction can know of a statement. Received at once they count as known: nobody corrects the future. */
export function isKnownTo(said: Statement, correction: Statement): boolean {
  return said.message.receipt.milliseconds <= correction.message.receipt.milliseconds;
}
