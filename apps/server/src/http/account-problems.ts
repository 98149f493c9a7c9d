import type { ProblemKind } from './problem-kind.js';

/** About accounts, and who works here. */
export const ACCOUNT_PROBLEMS = {
  'first-secret-over': {
    status: 403,
    title: 'The first secret was not used in time',
    next: 'Ask an administrator for another.',
  },
  'own-secret-needed': {
    status: 403,
    title: 'Choose a secret of your own first',
    next: 'Change the first secret to one that only you know; then choose the operator.',
  },
  'has-own-secret': {
    status: 409,
    title: 'This person has a secret of their own',
    next: 'Nobody gives out another. The person changes it on their own page, or signs in another way.',
  },
  'sign-in-name-taken': {
    status: 409,
    title: 'Somebody on this server has this sign-in name',
    next: 'Choose another. Somebody who has an account on this server already is invited instead.',
  },
  'number-taken': {
    status: 409,
    title: 'This organisation gave this number before',
    next: 'Give it another number; numbers are never used again.',
  },
  'still-works': {
    status: 409,
    title: 'The membership has not ended',
    next: 'Enter that the person leaves; an administrator of every operator concerned does it.',
  },
  'invitation-not-good': {
    status: 404,
    title: 'No invitation waits under this code',
    next: 'Look at how it is written; it is good once and for a few days. Otherwise ask who gave it to you for another.',
  },
  'works-here': {
    status: 409,
    title: 'You work for this operator already',
    next: 'Nothing is to be done; roles are changed by an administrator there.',
  },
} as const satisfies Record<string, ProblemKind>;
