import type { Jobs } from '#store';
import type { MailRoute } from './send-mail.js';

/** What the server needs to do something by itself, beside answering. */
export interface WatchOptions {
  jobs: Jobs;
  /** Null: no mail server was named, and mail waits. */
  mail: MailRoute | null;
  /** Endpoints on machines inside may be reached. */
  endpointsInside: boolean;
  /** Encrypt secrets of endpoints in the database; the first one does, the others open what it did not. */
  secretKeys?: readonly Buffer[];
  /** How often open deferrals are looked at; absent: every ten minutes. */
  lookEverySeconds?: number;
  /** The first pause after an attempt in vain; absent: a minute. */
  firstPauseSeconds?: number;
  /** Pause after nothing was found to do; absent: one second. */
  everyMs?: number;
}
