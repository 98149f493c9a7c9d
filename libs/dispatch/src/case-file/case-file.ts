/** A case file as the schema leaves it: the short forms are still short. */
import type { Proviso } from '#mel';
import type { StationFacts } from '../next-flights/next-flights.js';
import type {
  Directive,
  Gates,
  JudgeSettings,
  KnownFact,
  OpenDefect,
  OtherBasis,
  PlannedFlight,
  RecordedJudgement,
  WorkState,
} from '../situation.js';

export type CaseFact = KnownFact | KnownFact['value'];

export interface CaseDefect extends Omit<OpenDefect, 'id' | 'units' | 'row' | 'signed' | 'basis' | 'formerLimits'> {
  id?: string;
  unit?: string;
  units?: string[];
  row?: string | null;
  signed?: boolean;
  basis?: Omit<OtherBasis, 'conditions'> & { conditions?: Proviso[] };
}

export interface CaseFile {
  at: string;
  tzdb?: string;
  aircraft: { registration: string; type: string; configuration?: string[] | null; serial?: number | null };
  defects?: CaseDefect[];
  flight?: PlannedFlight | null;
  /** The flights of a day, in their order, instead of one. */
  flights?: PlannedFlight[];
  stations?: StationFacts[];
  facts?: Record<string, CaseFact>;
  work?: (WorkState | string)[];
  judgements?: (Omit<RecordedJudgement, 'at'> & { at?: string })[];
  directives?: Directive[];
  gates?: Partial<Gates>;
  settings?: Partial<JudgeSettings>;
}

/** One thing wrong with a case file, said so that its author can find it. */
export interface CaseError {
  file: string;
  /** JSON pointer (RFC 6901) to the place. */
  pointer: string;
  reason: string;
}
