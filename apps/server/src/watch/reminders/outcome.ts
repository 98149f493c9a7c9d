/** What became of one attempt to hand a reminder over. */
export type Outcome =
  | { kind: 'sent' }
  /** For good: trying again would end the same way. `gone`: the whole address is no more. */
  | { kind: 'refused'; problem: string; gone: boolean }
  | { kind: 'failed'; problem: string; retryAfterSeconds: number | null };

export function failed(problem: string, retryAfterSeconds: number | null = null): Outcome {
  return { kind: 'failed', problem: problem.slice(0, 300), retryAfterSeconds };
}
