/** What must be done before work is released and the defect is closed by it. 145.A.50(a); 145.A.48. */
import type { DefectLife, OpenWork } from '../defect-life.js';
import { nothingLeft } from '../leaving/left-items.js';
import { Refusal } from '../refusal.js';

/** Throws Refusal naming what is still missing. */
export function admitClosingWork(life: DefectLife, { done, tested, restored }: OpenWork): void {
  const { defect, altered } = life;
  const last = done.at(-1);
  if (last?.complete !== true) {
    throw new Refusal('work-not-complete', { defect, missing: last?.workDone ?? 'no work is entered' });
  }
  if (done.some(({ testAsked }) => testAsked) && tested === null) throw new Refusal('test-not-good', { defect });
  if (tested !== null && tested.result !== 'good') throw new Refusal('test-not-good', { defect });
  nothingLeft(life);
  if (altered && restored === null) throw new Refusal('not-restored', { defect });
}
