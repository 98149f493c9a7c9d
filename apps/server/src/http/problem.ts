/**
 * Errors as RFC 9457 problem details. One documented type per refusal: `/api/problems/<code>` answers with its text.
 * The type is the contract; title and detail are for people.
 */
import { REFUSALS, Refusal } from '#deferrals';
import { ACCOUNT_PROBLEMS } from './account-problems.js';
import type { ProblemKind } from './problem-kind.js';
import { refusalStatus } from './refusal-status.js';

export interface ProblemBody {
  type: string;
  title: string;
  status: number;
  detail: string;
  /** What to do next. */
  next?: string;
  /** Each failed condition with a JSON pointer into the request. */
  errors?: { pointer: string; reason: string }[];
  [extension: string]: unknown;
}

/** Problems of the interface itself; those of the trade are the refusals of libs/deferrals. */
export const PROBLEMS = {
  ...ACCOUNT_PROBLEMS,
  'not-signed-in': { status: 401, title: 'Nobody is signed in', next: 'Sign in and send the request again.' },
  'sign-in-failed': {
    status: 401,
    title: 'Name or secret is not right',
    next: 'Check both and try again; after several failures the name is locked for a while.',
  },
  'sign-in-locked': {
    status: 429,
    title: 'Too many failed attempts for this name',
    next: 'Wait until the time given and try again.',
  },
  'too-many-requests': { status: 429, title: 'Too many requests', next: 'Wait a moment and try again.' },
  'no-operator-chosen': {
    status: 409,
    title: 'No operator is chosen for this session',
    next: 'Choose one of your operators, then send the request again.',
  },
  'role-missing': {
    status: 403,
    title: 'Your role does not allow this',
    next: 'Ask somebody who holds one of the roles named.',
  },
  'not-for-oneself': {
    status: 403,
    title: 'Nobody does this for themselves',
    next: 'Ask somebody else who may do it.',
  },
  'foreign-origin': {
    status: 403,
    title: 'The request came from another site',
    next: 'Use the pages of this server, or send no Origin header.',
  },
  'not-found': { status: 404, title: 'There is no such thing here', next: 'Check the address or the id.' },
  'invalid-input': {
    status: 422,
    title: 'The input is not right',
    next: 'Correct what is named under errors and send it again.',
  },
  'unreadable-body': { status: 400, title: 'The body cannot be read', next: 'Send well-formed JSON.' },
  'body-too-large': {
    status: 413,
    title: 'The body is too large',
    next: 'Send less: descriptions take 4,000 characters.',
  },
  'unsupported-media-type': {
    status: 415,
    title: 'This kind of body is not taken',
    next: 'Send application/json.',
  },
  'precondition-required': {
    status: 428,
    title: 'If-Match is missing',
    next: 'Read the item, and send its ETag back in If-Match.',
  },
  'changed-meanwhile': {
    status: 412,
    title: 'Somebody changed it meanwhile',
    next: 'Read it again, look at what changed, and decide anew.',
  },
  'entered-meanwhile': {
    status: 409,
    title: 'Somebody entered the same at the same moment',
    next: 'Read it again: it is there already.',
  },
  'idempotency-key-missing': {
    status: 400,
    title: 'Idempotency-Key is missing',
    next: 'Send a fresh UUID in Idempotency-Key; the same one when you repeat the request.',
  },
  'idempotency-key-in-use': {
    status: 409,
    title: 'The same request is still running',
    next: 'Wait a moment and repeat it with the same key.',
  },
  'idempotency-key-reused': {
    status: 422,
    title: 'This Idempotency-Key was used for another request',
    next: 'Use a fresh key for a new request.',
  },
  'secret-wrong': {
    status: 403,
    title: 'The secret is not right, so nothing was signed',
    next: 'Enter your own secret again.',
  },
  'passkey-wrong': {
    status: 403,
    title: 'The passkey is not right, so nothing was done',
    next: 'Try again with a passkey of your own, or use another way.',
  },
  'passkeys-need-a-name': {
    status: 409,
    title: 'Passkeys do not work at this address',
    next: 'Open the pages by the name of the server instead of a number; at this machine itself, by localhost.',
  },
  'too-many-passkeys': {
    status: 409,
    title: 'You hold as many passkeys as one person may',
    next: 'Remove one that you no longer use.',
  },
  'challenge-over': {
    status: 403,
    title: 'This attempt is over, so nothing was done',
    next: 'Begin again; each attempt is good once, for a few minutes and for one statement.',
  },
  'sign-on-failed': {
    status: 403,
    title: 'The sign-on does not prove who you are, so nothing was done',
    next: 'Begin again from this page.',
  },
  'sign-on-unlinked': {
    status: 403,
    title: 'Nobody here has linked this account',
    next: 'Sign in with your name and secret, and link it on your own page.',
  },
  'sign-on-taken': {
    status: 409,
    title: 'This account is linked to somebody already',
    next: 'Sign on there with your own account.',
  },
  'statement-not-shown': {
    status: 409,
    title: 'The statement sent back is not the one to be signed',
    next: 'Read the statement again and sign what it says now.',
  },
  'retention-binds': {
    status: 409,
    title: 'It has to be kept for a while yet',
    next: 'Come back after the time given; a period of the operator is changed under its settings.',
  },
  'item-open': {
    status: 409,
    title: 'An item with an entry of the person is open',
    next: 'Come back once it is closed and its period of keeping has passed.',
  },
  'under-hold': {
    status: 409,
    title: 'It is held beyond its period of keeping',
    next: 'Release what is held, under the periods of keeping of the record, once its reason is gone.',
  },
  'too-long-to-verify-here': {
    status: 409,
    title: 'The record is too long to be read through while a page waits',
    next: 'Have it verified on the server: proviso record verify.',
  },
  'row-not-available': {
    status: 409,
    title: 'This row cannot be used now',
    next: 'Look at the reasons; choose another row or rectify.',
  },
  'aircraft-retired': {
    status: 409,
    title: 'This aircraft has left the fleet',
    next: 'Look at its history; an engineer or administrator brings it back where it flies again.',
  },
  'aircraft-in-use': {
    status: 409,
    title: 'Something is still open on this aircraft, left on it or planned for it',
    next: 'Close, undo or cancel what is named first; then it may leave the fleet.',
  },
  'revision-known': {
    status: 409,
    title: 'This revision was loaded before',
    next: 'Give the changed text a revision of its own; one that was loaded stays as it is.',
  },
  'confirmed-already': {
    status: 409,
    title: 'The card is confirmed against this revision already',
    next: 'Nothing is left to do: the card can be signed.',
  },
  'too-many-feeds': {
    status: 409,
    title: 'You hold as many calendar feeds as one person may',
    next: 'Revoke one that you no longer use.',
  },
  'too-many-addresses': {
    status: 409,
    title: 'You entered as many addresses as one person may',
    next: 'Turn one off that you no longer use.',
  },
  'code-not-right': {
    status: 422,
    title: 'This is not the code that was sent to this mailbox last',
    next: 'Look at the newest mail, or ask for another code.',
  },
  'no-code-to-tell': {
    status: 409,
    title: 'No code is waited for',
    next: 'Ask for another code.',
  },
  'too-many-mailboxes': {
    status: 429,
    title: 'Too many mailboxes were entered within a day',
    next: 'Try it tomorrow, or confirm one of those that were entered.',
  },
  'too-many-codes': {
    status: 409,
    title: 'No more codes are sent to this mailbox',
    next: 'Turn it off, look at how it is written, and enter it anew.',
  },
  'nothing-to-confirm': {
    status: 409,
    title: 'Nothing waits for a confirmation',
    next: 'Read the list again.',
  },
  'settings-need-signature': {
    status: 409,
    title: 'Something open would read otherwise, so the change is signed',
    next: 'Read the list, and send the change again with the statement and your secret.',
  },
  'no-extension-asked': {
    status: 409,
    title: 'Nobody has asked for an extension',
    next: 'Ask for it first, with the reason, why it was not rectified in time, and the plan.',
  },
  'notice-out-of-order': {
    status: 409,
    title: 'The notice does not stand where this step begins',
    next: 'Read the extension again: a notice is owed once granted, sent once, and acknowledged after that.',
  },
  'judges-disagree': {
    status: 500,
    title: 'Two ways of computing the answer disagree',
    next: 'Do not dispatch on this answer; call maintenance control.',
  },
  'internal-error': {
    status: 500,
    title: 'Something went wrong here',
    next: 'Nothing was changed. Try again; tell the administrator the instance id.',
  },
} as const satisfies Record<string, ProblemKind>;

export type ProblemCode = keyof typeof PROBLEMS;

export class Problem extends Error {
  constructor(
    readonly code: ProblemCode,
    detail: string,
    readonly extension: Partial<ProblemBody> = {},
  ) {
    super(detail);
  }

  body(): ProblemBody {
    const kind = PROBLEMS[this.code];
    return {
      type: problemType(this.code),
      title: kind.title,
      status: kind.status,
      detail: this.message,
      next: kind.next,
      ...this.extension,
    };
  }
}

export function problemType(code: string): string {
  return `/api/problems/${code}`;
}

/** A refusal of the trade as problem details. */
export function refusalBody(refusal: Refusal): ProblemBody {
  return {
    type: problemType(refusal.code),
    title: refusal.message,
    status: refusalStatus(refusal.code),
    detail: refusal.message,
    next: refusal.next,
    paragraph: REFUSALS[refusal.code].paragraph,
    facts: refusal.facts,
  };
}
