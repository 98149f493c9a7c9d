import { FT, TT } from '../kleene.js';
import type { OpenDefect } from '../situation.js';
import { judged, partOf, type FixedRule } from './item.js';

/** The row is the one signed for this unit. A row that is only proposed is work: choose it, and sign. */
export const signedRow: FixedRule = (item) => {
  const { defect, entry, row, unit } = item;
  if (defect === null) return [];
  const id = partOf(item, 'signature');
  const text = `row ${row.id} is signed for ${entry.title} ${unit}`;
  if (defect.signed) return [judged('signed-row', id, text, TT, 'it is the recorded row')];
  const work = {
    work: id,
    text: `${act(defect)} row ${row.id} of ${entry.number} ${entry.title} for unit ${unit}`,
    minutes: 0,
    by: 'technician' as const,
    needsPersonAtStation: false,
    defect: defect.id,
  };
  return [judged('signed-row', id, text, FT, 'the row is proposed and not yet signed', { work })];
};

function act({ insteadOf }: OpenDefect): string {
  return insteadOf === undefined ? 'Sign' : `Change the row from ${insteadOf} and sign`;
}
