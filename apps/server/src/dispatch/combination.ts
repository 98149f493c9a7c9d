import type { JudgementRow } from '#store';

/** A row in force on a unit, as an acceptance of the combination names it. */
export interface CoveredItem {
  defect: string;
  entry: string | null;
  row: string | null;
}

/**
 * An acceptance of the combination covers every subset of what was accepted, under the same rows. A new item or a changed
 * row asks again.
 */
export function coversAll(judgement: Pick<JudgementRow, 'covers'>, open: readonly CoveredItem[]): boolean {
  const items = judgement.covers['items'];
  if (!Array.isArray(items)) return false;
  const covered = new Set((items as CoveredItem[]).map(keyOf));
  return open.every((item) => covered.has(keyOf(item)));
}

function keyOf({ defect, entry, row }: CoveredItem): string {
  return JSON.stringify([defect, entry, row]);
}
