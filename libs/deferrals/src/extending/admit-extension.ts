/**
 * What an operator may extend: categories B, C and D, as often as the rules in force say (once), never category A, and
 * only while the interval still runs. ORO.MLR.105(e)(3) and (f); FAA Order 8900.1 4-689.
 */
import type { Extended } from '../acts.js';
import { basisInWords } from '../basis.js';
import type { DefectLife } from '../defect-life.js';
import { before } from '../instant.js';
import { Refusal } from '../refusal.js';
import { earliestEnd } from '../signed-limit.js';

/** The extension that is asked for: when it is granted, and how often the rules in force allow it. */
export type ExtensionAsked = Pick<Extended, 'timesAllowed'> & { grantedAt: string };

/** Throws Refusal. */
export function admitExtension(life: DefectLife, { grantedAt, timesAllowed }: ExtensionAsked): void {
  const { defect, deferral, bases, extensions, limits } = life;
  if (deferral === null) throw new Refusal('not-deferred', { defect });
  if (bases.some((basis) => basis.kind === 'mel-row' && basis.category === 'A')) {
    throw new Refusal('category-a-not-extendable', { defect });
  }
  const other = bases.find((basis) => basis.kind !== 'mel-row');
  if (other !== undefined) throw new Refusal('basis-not-extendable', { basis: basisInWords(other) });
  const last = extensions.at(-1);
  if (last !== undefined && timesAllowed !== null && extensions.length >= timesAllowed) {
    throw new Refusal('second-extension', { defect, extendedAt: last.enteredAt });
  }
  const endedAt = earliestEnd(limits);
  if (endedAt !== null && !before(grantedAt, endedAt)) {
    throw new Refusal('extension-after-expiry', { endedAt, grantedAt });
  }
}
