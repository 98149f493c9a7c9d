/** Something that is not known and stands in some condition, with the values that would make a difference. */
import type { Role } from '#mel';
import type { Scalar } from '../evaluate/marker.js';
import type { NowAfter } from '../verdict.js';

export interface OpenFact {
  key: string;
  question: string;
  mayAnswer: Role[];
  /** One value from each part of the domain that the conditions tell apart. */
  cells: Scalar[];
  neededBy: string[];
  /** About what a defect is of: it may also change which units are down. */
  aboutUnits: boolean;
}

export const isOpen = ({ now, after }: NowAfter): boolean => now === 'U' || after === 'U';
