import { EntitySchema } from 'typeorm';
import { json, key, nullable, text, version, yesNo } from './column.js';

/** An air operator: whose aircraft, MEL, people and record these are. */
export interface OperatorRow {
  id: string;
  code: string;
  name: string;
  /** True for a demo operator, and then said on every page. */
  invented: boolean;
  /** `UTC` or one IANA zone: the zone of its calendar days. */
  base: string;
  settings: Record<string, unknown>;
  /** The newest time-zone data that its open deadlines were counted with; null before a server looked. */
  tzdb: string | null;
  version: number;
}

export const OperatorTable = new EntitySchema<OperatorRow>({
  name: 'operator',
  columns: {
    id: key(),
    code: text(),
    name: text(),
    invented: yesNo({ default: false }),
    base: text(),
    settings: json({ default: {} }),
    tzdb: text(nullable),
    version: version(),
  },
  uniques: [{ name: 'operator_code', columns: ['code'] }],
});
