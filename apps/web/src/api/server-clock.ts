/**
 * The time as the server has it. A tablet's clock may be wrong; a log time ahead of the server's would be refused. What
 * is kept is the difference seen when the server last told its time, which is a little late and so never in its future.
 */
let toldMs = Date.now();
let wallMs = toldMs;
let steadyMs = performance.now();

/** @param at instant at which the server answered, ISO 8601 */
export function noteServerTime(at: string): void {
  const told = Date.parse(at);
  if (Number.isNaN(told)) return;
  toldMs = told;
  wallMs = Date.now();
  steadyMs = performance.now();
}

/** The instant now on the server's clock, ISO 8601 UTC. */
export function serverNow(): string {
  return new Date(toldMs + wallPassed()).toISOString();
}

/**
 * The least that the server's clock can show now, in milliseconds. The device's clock may have been set since the server
 * told its time, and its steady counter may have stood still while it slept: the one that counted less is never too early.
 */
export function serverAtLeast(): number {
  return toldMs + Math.max(0, Math.min(wallPassed(), steadyPassed()));
}

/** Whether the device slept, or its clock was set, since the server told its time: then it is asked again. */
export const clockMoved = (): boolean => Math.abs(wallPassed() - steadyPassed()) > 2000;

const wallPassed = (): number => Date.now() - wallMs;
const steadyPassed = (): number => performance.now() - steadyMs;
