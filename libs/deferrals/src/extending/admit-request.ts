/**
 * Who asks for an extension and why: a reason outside the operator's control, why it was not fixed in time, a plan; and
 * it is granted by another named person. ORO.MLR.105(f) and its AMC1; FAA Order 8900.1 4-689.
 */
import type { ExtensionRequest } from '../acts.js';
import { before } from '../instant.js';
import type { Signature } from '../people.js';
import { Refusal } from '../refusal.js';
import { needText } from '../writing-up/need-text.js';

/** A request without who made it and when. */
export type ExtensionAsking = Omit<ExtensionRequest, 'by' | 'requestedAt'>;

/** What the request itself must say. Throws Refusal. */
export function admitAsking({ reason, outsideOperatorsControl, whyNotFixed, plan }: ExtensionAsking): void {
  needText('the reason for the extension', reason);
  needText('why it was not rectified in time', whyNotFixed);
  needText('the plan to rectify it', plan);
  if (outsideOperatorsControl !== true) throw new Refusal('extension-reason-within-control', { reason });
}

/** Throws Refusal. */
export function admitRequest(request: ExtensionRequest, grantedBy: Signature, grantedAt: string): void {
  const { by, requestedAt } = request;
  admitAsking(request);
  if (by.person === grantedBy.person) throw new Refusal('same-person-granting', { name: grantedBy.name });
  if (before(grantedAt, requestedAt)) throw new Refusal('extension-asked-after-grant', { requestedAt, grantedAt });
}
