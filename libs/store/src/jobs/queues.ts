/**
 * What servers do beside answering requests, one queue each. A job says that there is something to do and about which
 * row; what was done stands in that row.
 */
export interface JobsOf {
  /** Look which operators have something to be noticed. */
  look: Record<string, never>;
  /** Look at every open deferral of one operator. */
  notice: { operatorId: string };
  /** Look at what of one operator is past its period of keeping. */
  keep: { operatorId: string };
  /** Hand one reminder over. */
  deliver: { operatorId: string; reminderId: string };
  /** Send a code to a mailbox, so that somebody shows that they read it. */
  confirm: { operatorId: string; addressId: string };
}

export type Queue = keyof JobsOf;
export const QUEUES = ['look', 'notice', 'keep', 'deliver', 'confirm'] as const satisfies readonly Queue[];

export const JOBS_SCHEMA = 'pgboss';
