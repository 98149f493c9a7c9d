/**
 * A tool that a step needs is issued before that step and returned after it, by its number, so that one left in a bay is
 * missed. 145.A.48(a)(1): after maintenance the aircraft is clear of tools.
 */
import type { Path } from '../checks/places.js';
import type { Finding } from '../mel-error.js';
import type { Card, CardStep, Need } from './card.js';
import { stepsLeadingTo } from './steps-leading-to.js';

export const toolFindings = (card: Card, step: CardStep, path: Path): Finding[] =>
  (step.needs ?? []).flatMap((need, at) => {
    const reason = whyNot(card, step, need);
    return reason === null ? [] : [{ path: [...path, 'needs', at, 'account'], reason }];
  });

function whyNot(card: Card, step: CardStep, { kind, what, account }: Need): string | null {
  if (kind !== 'tool') return account === undefined ? null : `only a tool has an account`;
  if (account === undefined) return `is missing: "${what}" is a tool, so an account issues and returns it`;
  const kept = card.accounts?.find(({ id }) => id === account);
  if (kept?.pair !== 'issue-return' || kept.kind !== 'tool' || kept.numbered !== true) {
    return `"${account}" is no account that issues and returns a numbered tool`;
  }
  const [out, back] = (['out', 'in'] as const).map((way) =>
    card.steps.find((one) => one.kind === way && one.account === account),
  );
  if (!out || !stepsLeadingTo(card, step).has(out.id)) return `"${kept.what}" need not be issued before this step`;
  if (!back || !stepsLeadingTo(card, back).has(step.id)) return `"${kept.what}" may be returned before this step`;
  return null;
}
