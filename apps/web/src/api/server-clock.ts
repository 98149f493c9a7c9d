/**
 * The time as the server has it. A tablet's clock may be wrong; a log time ahead of the server's would be refused. What
 * is kept is the difference seen when the server last told its time, which is a little late and so never in its future.
 */
let aheadMs = 0;

/** @param at instant at which the server answered, ISO 8601 */
export function noteServerTime(at: string): void {
  const told = Date.parse(at);
  if (!Number.isNaN(told)) aheadMs = told - Date.now();
}

/** The instant now on the server's clock, ISO 8601 UTC. */
export function serverNow(): string {
  return new Date(Date.now() + aheadMs).toISOString();
}
