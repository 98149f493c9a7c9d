import { EntitySchema } from 'typeorm';
import { day, id, instant, json, key, nullable, text, texts, version, whole, yesNo } from './column.js';
import { toMember, within } from './foreign-key.js';

/**
 * A defect as its acts add up, kept for lists. It begins with a write-up, is answered by rectification or deferral, and
 * ends when it is closed.
 */
export interface DefectRow {
  operatorId: string;
  id: string;
  aircraftId: string;
  /** Gapless from 1 for each aircraft. */
  number: number;
  description: string;
  raisedBy: string | null;
  /** The paper sheet, where it was first written on paper. */
  logPage: string | null;
  occurredAt: string | null;
  recordedAt: string;
  enteredAt: string;
  lateReason: string | null;
  /** MEL entry number; null until somebody matched it. */
  entry: string | null;
  units: string[];
  subEntry: string | null;
  melRow: string | null;
  melRevisionId: string | null;
  /** True when the row is the one signed for this unit. */
  signed: boolean;
  basis: object | null;
  state: string;
  /** The legal deadline as signed: the last day, and the exclusive instant it ends at under these zone data. */
  lastDay: string | null;
  endsAt: string | null;
  tzdb: string | null;
  closedAt: string | null;
  version: number;
}

export const DefectTable = new EntitySchema<DefectRow>({
  name: 'defect',
  columns: {
    operatorId: key(),
    id: key(),
    aircraftId: id(),
    number: whole(),
    description: text(),
    raisedBy: id(nullable),
    logPage: text(nullable),
    occurredAt: instant(nullable),
    recordedAt: instant(),
    enteredAt: instant(),
    lateReason: text(nullable),
    entry: text(nullable),
    units: texts({ default: [] }),
    subEntry: text(nullable),
    melRow: text(nullable),
    melRevisionId: id(nullable),
    signed: yesNo({ default: false }),
    basis: json(nullable),
    state: text(),
    lastDay: day(nullable),
    endsAt: instant(nullable),
    tzdb: text(nullable),
    closedAt: instant(nullable),
    version: version(),
  },
  uniques: [{ name: 'defect_number', columns: ['operatorId', 'aircraftId', 'number'] }],
  indices: [{ name: 'defect_open', columns: ['operatorId', 'aircraftId'], where: 'closed_at is null' }],
  checks: [{ name: 'defect_number_counted', expression: 'number > 0' }],
  foreignKeys: [
    within('defect_aircraft', 'aircraft', 'aircraftId'),
    toMember('defect_raised_by', 'raisedBy'),
    within('defect_mel_revision', 'mel_revision', 'melRevisionId'),
  ],
});
