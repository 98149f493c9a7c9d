/** What is proposed for all open defects together, before one flight. A proposal is never the record. */
import type { Verdict } from '../verdict.js';

export interface ProposeOptions {
  /** Search nodes, never time; the situation's own budget when absent. */
  budget?: number;
}

/** The row of one defect in the choice that is shown. */
export interface ProposedRow {
  defect: string;
  entry: string | null;
  units: string[];
  /** Null where the entry offers none, or the defect stands on another basis. */
  row: string | null;
  /** The row signed for it now. */
  signedRow: string | null;
  /** True when the row would have to be changed, or signed for the first time: the row, its placard and (M) are work. */
  isChange: boolean;
}

export interface Proposal {
  /** Judged by the rules engine under the best choice; `lo` and `hi` are the greatest over all choices, each by itself. */
  verdict: Verdict;
  /** In the order of the defects' ids. */
  rows: ProposedRow[];
  /** False when a better choice may exist, since the search was given up. */
  shownBest: boolean;
  /** Why the search was given up. */
  reason: 'budget' | 'readings' | null;
  /** Search nodes used. */
  nodes: number;
}
