/** One item under deferral with work on it, and corrections of it to try. */
import type { DefectLife } from '../defect-life.js';
import { context, deferredAs, signed } from '../invented.fixture.js';
import type { AskCorrection } from './ask-correction.js';
import { readsNow } from './reads-now.js';

export const RECORDED = '2026-01-26T10:00Z';
export const at = '2026-01-27T10:00Z';
export const given = context(at);
export const tech = signed('tech', at);
export const second = signed('second', at);
export const placard = { text: 'AP 1 INOP', position: 'glareshield' };
export const deferred = deferredAs({ category: 'C', placard }, RECORDED);

/** A correction of what stands there now, of an aircraft that flew nothing. */
export const asked = (
  life: DefectLife,
  over: Partial<AskCorrection> & Pick<AskCorrection, 'act' | 'field' | 'now'>,
) => {
  const { act, field, part } = over;
  const was = readsNow(life, { act, field, item: null, ...(part === undefined ? {} : { part }) }) ?? null;
  return { id: 'c', by: tech, was, reason: 'misread', flown: [], ...over };
};
