/**
 * What an authority allows beyond the deadline (a permit to fly, an authority document) is entered as its document and
 * shown as such. It moves no deadline. 21.A.701; M.A.403(b).
 */
import type { AuthorityGranted } from '../acts.js';
import { decided, type ActRule } from '../act-rule.js';
import { headOf, type Command, type Context } from '../context.js';
import type { DefectLife } from '../defect-life.js';
import { before } from '../instant.js';
import { Refusal } from '../refusal.js';
import { needText } from '../writing-up/need-text.js';

export const authorityGranted: ActRule<'authority-granted'> = {
  kind: 'authority-granted',
  privilege: 'defer',
  admit(_, { document, limit, from, until, kindsOfFlight }) {
    needText("the document's number", document.number);
    needText('the authority that issued it', document.authority);
    needText('the limit that the document sets', limit);
    if (!before(from, until)) throw new Refusal('grant-window-empty', { document: document.number, from, until });
    for (const kind of kindsOfFlight ?? []) needText('the kind of flight', kind);
  },
  changes: (life, act) => ({ grants: [...life.grants, act] }),
};

export type EnterGrant = Command &
  Pick<AuthorityGranted, 'document' | 'limit' | 'conditions' | 'from' | 'until' | 'flights' | 'kindsOfFlight'>;

export function enterGrant(life: DefectLife, command: EnterGrant, context: Context): AuthorityGranted[] {
  const { document, limit, conditions, from, until, flights, kindsOfFlight } = command;
  const said = { document, limit, conditions, from, until, flights, kindsOfFlight };
  return decided(authorityGranted, life, {
    kind: 'authority-granted',
    ...headOf(command, context),
    defect: life.defect,
    ...said,
  });
}
