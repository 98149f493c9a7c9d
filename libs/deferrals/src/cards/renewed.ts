/** What is fitted new is named by its number and its batch, and where the card asks by its release certificate. 145.A.42. */
import type { StepOf } from '#mel';
import { Refusal } from '../refusal.js';
import { needText } from '../writing-up/need-text.js';
import type { StepResult } from './card-acts.js';

/** Throws Refusal. */
export function admitRenewed(
  named: string,
  { part, count = 1, certified = false }: StepOf<'renew'>,
  { partNumber, batch, count: given, certificate = '' }: StepResult & { kind: 'renewed' },
): void {
  needText('the part number of what was fitted new', partNumber);
  needText('the batch, serial or certificate number of what was fitted new', batch);
  if (given !== count) throw new Refusal('renewed-too-few', { step: named, part, asked: count, given });
  if (certified && certificate.trim() === '') throw new Refusal('certificate-missing', { step: named, part });
}
