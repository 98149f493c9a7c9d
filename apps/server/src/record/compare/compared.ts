import type { Difference } from './difference.js';

export interface Compared {
  operator: string;
  /** Sealed entries that were read. */
  entries: number;
  /** Rows that were held against what was rebuilt or told. */
  rows: number;
  differences: Difference[];
}
