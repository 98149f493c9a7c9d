/** Which procedures of the row were done: a shorter limit inside its interval waits for one of them. */
import type { Used } from '#intervals';
import type { DefectLife } from '../defect-life.js';

export function withDone(used: Used, { procedures }: Pick<DefectLife, 'procedures'>): Used {
  const done = procedures.map(({ work }) => work.slice(work.lastIndexOf('/') + 1));
  return done.length === 0 ? used : { ...used, done };
}
