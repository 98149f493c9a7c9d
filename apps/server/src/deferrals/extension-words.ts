/** What an extension would give, and the words that its granter signs. */
import { deadlineOf, type DefectLife, type ExtensionOffer, offerExtension } from '#deferrals';
import type { ExtensionRow, Tx } from '#store';
import { Problem } from '../http/problem.js';
import type { OperatorSettings } from '../people/operator-settings.js';
import { sayDay, sayInstant } from './say-time.js';

/** The request that waits to be decided. Throws Problem `no-extension-asked`. */
export async function requestOf(tx: Tx, defectId: string): Promise<ExtensionRow> {
  const asked = await tx.extensions.asked(defectId);
  if (!asked)
    throw new Problem('no-extension-asked', 'No request for an extension of this defect waits to be decided.');
  return asked;
}

/** Throws Refusal. */
export function offerFor(
  life: DefectLife,
  { days, agreement }: Pick<ExtensionRow, 'days' | 'agreement'>,
  { deferral }: OperatorSettings,
  at: string,
): ExtensionOffer {
  const asked = { grantedAt: at, ...(days === null ? {} : { days }), ...(agreement === null ? {} : { agreement }) };
  return offerExtension(life, asked, deferral);
}

/** What is granted, as the statement says it: the result, not the request. No name: a statement is recorded for ever. */
export async function extensionWords(
  tx: Tx,
  life: DefectLife,
  settings: OperatorSettings,
  at: string,
): Promise<string> {
  const row = await requestOf(tx, life.defect);
  const { procedure, limits } = offerFor(life, row, settings, at);
  const [before, after] = [endWords(life.limits), endWords(limits)];
  const agreed = row.agreement === null ? '' : `, agreed by the authority under ${row.agreement}`;
  return `to the end of ${after} instead of ${before}, under procedure ${procedure}${agreed}, as asked for on ${sayInstant(row.askedAt)}`;
}

function endWords(limits: ExtensionOffer['limits'] | DefectLife['limits']): string {
  const { lastDay, endsAt } = deadlineOf(limits);
  if (lastDay !== null) return sayDay(lastDay);
  return endsAt === null ? 'what is counted' : sayInstant(endsAt);
}
