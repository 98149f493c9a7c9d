/** A refusal as the server words it (RFC 9457), or the fact that the server could not be reached. */
export interface FieldError {
  /** JSON pointer into what was sent. */
  pointer: string;
  reason: string;
  /** Where in a file that was sent. */
  entry?: string;
  card?: string;
  step?: string;
}

interface ProblemBody {
  title: string;
  detail: string;
  next: string;
  type: string;
  paragraph: string;
  errors: FieldError[];
}

export class Problem extends Error {
  readonly title: string;
  readonly detail: string;
  /** What to do next. */
  readonly next: string;
  /** Last part of the documented type, such as `secret-wrong`; empty when there is none. */
  readonly code: string;
  readonly errors: FieldError[];
  /** Of the rule it was refused by; empty where it is none of the trade. */
  readonly paragraph: string;

  constructor(
    /** The HTTP status; 0 when there was no answer. */
    readonly status: number,
    body: Partial<ProblemBody>,
  ) {
    super(body.detail ?? body.title ?? `The server answered ${status}`);
    this.title = body.title ?? `The server answered ${status}`;
    this.detail = body.detail ?? '';
    this.next = body.next ?? 'Try again.';
    this.code = body.type?.replace('/api/problems/', '') ?? '';
    this.errors = body.errors ?? [];
    this.paragraph = body.paragraph ?? '';
  }
}

/** Nobody knows whether an act that got no answer was done; sending it again under its key does it once. */
export function unreachable(method: string): Problem {
  return method === 'GET'
    ? new Problem(0, { title: 'The server cannot be reached', next: 'Check the connection, then read again.' })
    : new Problem(0, {
        title: 'No answer came from the server',
        detail: 'It is not known whether this arrived.',
        next: 'Check the connection and send it again: it is done once, however often it is sent.',
      });
}

export function problemOf(status: number, value: unknown): Problem {
  const body = typeof value === 'object' && value !== null ? (value as Partial<ProblemBody>) : {};
  return new Problem(status, body);
}

/** An act that arrived before, under the same key, with other content: it was done then. */
export const DONE_BEFORE = 'idempotency-key-reused';
