import type { MovementMessage } from './message.js';
import type { Receipt } from './receipt.js';

/** A message with what dating needs besides. */
export interface DatedMessage extends MovementMessage {
  receipt: Receipt;
  /** Days since 1970 of `scheduledOn`. */
  scheduledDay: number;
}
