/** What keeps a card from being signed, each thing in words: what is still out on the aircraft, and which steps are not done. */
import { PAIRS, type CardAccount } from '#mel';
import type { DefectLife } from '../defect-life.js';
import type { CardWork } from './card-life.js';
import { doneBy, stepInWords } from './card-work.js';
import { outOf } from './counted.js';

export interface AccountStands {
  account: CardAccount;
  /** `not-yet`: not counted out. `out`: to be counted in. `stays`: out, and so it is left. */
  state: 'not-yet' | 'out' | 'in' | 'stays';
  /** Its number, while it stands in the register. */
  number: string | null;
}

/** How each account of the card stands. */
export function accountsOf(life: Pick<DefectLife, 'left'>, work: CardWork): AccountStands[] {
  const { accounts = [], steps } = work.started.card;
  return accounts.map((account) => {
    const did = (kind: 'out' | 'in') =>
      steps.some((step) => step.kind === kind && step.account === account.id && doneBy(work, step) !== undefined);
    const number = account.kind === undefined ? null : (outOf(life, work, account)[0]?.tag ?? null);
    if (did('in')) return { account, state: 'in', number: null };
    if (account.over === 'found') return { account, state: number === null ? 'not-yet' : 'out', number };
    if (!did('out')) return { account, state: 'not-yet', number: null };
    return { account, state: account.over === 'stays' ? 'stays' : 'out', number };
  });
}

/** "still pulled: pump breaker at panel P2, A7 (C-22)" */
export function stillOut(life: Pick<DefectLife, 'left'>, work: CardWork): string[] {
  return accountsOf(life, work)
    .filter(({ state }) => state === 'out')
    .map(stillOutInWords);
}

export function stillOutInWords({ account: { count = 1, what, where, pair }, number }: AccountStands): string {
  const many = count === 1 ? what : `${count} ${what}`;
  return `still ${PAIRS[pair].out}: ${many} at ${where}${number === null || number === what ? '' : ` (${number})`}`;
}

/** Everything that is missing. A step that would count in what is still out is told by the thing, not twice. */
export function missingOf(life: Pick<DefectLife, 'left'>, work: CardWork): string[] {
  const out = accountsOf(life, work).flatMap(({ account, state }) => (state === 'out' ? [account.id] : []));
  const notDone = work.started.card.steps.filter(
    (step) => doneBy(work, step) === undefined && !(step.kind === 'in' && out.includes(step.account)),
  );
  return [
    ...stillOut(life, work),
    ...notDone.map((step) => `not done: step ${stepInWords(work.started.card, step)}`),
  ];
}
