/**
 * What is in force after a change of row. The stricter of everything signed for the unit stays, so that a used-up or
 * expired row is not escaped by moving to a longer one. Once the other unit of a pair is fixed and control signs, the
 * limits of the pair's row end with it. ORO.MLR.105; M.A.403(c); which one counts: operator setting.
 */
import type { RowChanged } from '../acts.js';
import type { DefectLife } from '../defect-life.js';
import type { SignedLimit } from '../signed-limit.js';

export function limitsAfter(
  life: DefectLife,
  { limits, causeClosed, policy }: Pick<RowChanged, 'limits' | 'causeClosed' | 'policy'>,
): SignedLimit[] {
  if (policy === 'own-window') return limits;
  const kept = causeClosed === null ? life.limits : life.limits.filter(({ pair }) => !pair);
  return [...kept, ...limits];
}
