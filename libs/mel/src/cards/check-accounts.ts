/**
 * Every pair is matched: what a card opens it closes, what it pulls it resets, what it fits it removes; or it leaves it on
 * the aircraft as a registered thing; or it counts in what an earlier card left. 145.A.48.
 */
import { repeated } from '../checks/names.js';
import type { Path } from '../checks/places.js';
import type { Finding } from '../mel-error.js';
import { PAIRS, type Card, type CardAccount } from './card.js';
import { stepsLeadingTo } from './steps-leading-to.js';

export function accountFindings(card: Card, path: Path): Finding[] {
  const accounts = card.accounts ?? [];
  return [
    ...repeated(
      accounts.map(({ id }, at) => ({ name: id, path: [...path, 'accounts', at, 'id'] })),
      'within this card the account',
    ),
    ...card.steps.flatMap((step, at) =>
      (step.kind === 'out' || step.kind === 'in') && !accounts.some(({ id }) => id === step.account)
        ? [{ path: [...path, 'steps', at, 'account'], reason: `the card keeps no account "${step.account}"` }]
        : [],
    ),
    ...accounts.flatMap((account, at) => [
      ...registerFindings(account, [...path, 'accounts', at]),
      ...pairFindings(card, account, [...path, 'accounts', at]),
    ]),
  ];
}

/** What outlasts a card is a registered thing, and the register says how it is undone. */
function registerFindings({ what, over, kind, undo, numbered }: CardAccount, path: Path): Finding[] {
  const missing = (key: string, why: string) => [
    { path: [...path, key], reason: `is missing: ${why}, so "${what}" is registered` },
  ];
  if (over !== undefined && kind === undefined) return missing('kind', `it is left on the aircraft`);
  if (kind !== undefined && undo === undefined) {
    return [{ path: [...path, 'undo'], reason: `is missing: the register says how "${what}" is undone` }];
  }
  return numbered === true && kind === undefined ? missing('kind', 'it has a number of its own') : [];
}

function pairFindings(card: Card, { id, what, pair, over }: CardAccount, path: Path): Finding[] {
  const words = PAIRS[pair];
  const outs = card.steps.filter((step) => step.kind === 'out' && step.account === id);
  const ins = card.steps.filter((step) => step.kind === 'in' && step.account === id);
  const found = (reason: string): Finding[] => [{ path, reason }];
  if (outs.length > 1 || ins.length > 1) return found(`"${what}" is counted more than once each way`);
  const [out] = outs;
  const [back] = ins;
  if (over === 'found') {
    if (out) return found(`"${what}" was left by an earlier card, so no step of this one counts it out`);
    return back ? [] : found(`"${what}" is never ${words.in}`);
  }
  if (!out) return found(`"${what}" is never ${words.out}`);
  if (over === 'stays') return back ? found(`"${what}" stays, and yet step "${back.id}" counts it in`) : [];
  if (!back)
    return found(
      `"${what}" is ${words.out} in step "${out.id}" and never ${words.in}, nor left as a registered thing`,
    );
  return stepsLeadingTo(card, back).has(out.id)
    ? []
    : found(`"${what}" may be ${words.in} in step "${back.id}" before it is ${words.out} in step "${out.id}"`);
}
