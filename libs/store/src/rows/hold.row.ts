import { EntitySchema } from 'typeorm';
import { id, instant, key, nullable, text, version } from './column.js';
import { toMember, toOperator } from './foreign-key.js';

export const HOLD_KINDS = ['person', 'aircraft', 'defect'] as const;
export type HoldKind = (typeof HOLD_KINDS)[number];

/** That something is kept beyond its period until somebody releases it: a dispute, an investigation, an order. */
export interface HoldRow {
  operatorId: string;
  id: string;
  kind: HoldKind;
  /** Of the person, the aircraft or the defect. */
  subjectId: string;
  reason: string;
  placedAt: string;
  placedBy: string;
  releasedAt: string | null;
  releasedBy: string | null;
  releasedBecause: string | null;
  version: number;
}

const KINDS = "kind in ('person', 'aircraft', 'defect')";

export const HoldTable = new EntitySchema<HoldRow>({
  name: 'hold',
  columns: {
    operatorId: key(),
    id: key(),
    kind: text(),
    subjectId: id(),
    reason: text(),
    placedAt: instant(),
    placedBy: id(),
    releasedAt: instant(nullable),
    releasedBy: id(nullable),
    releasedBecause: text(nullable),
    version: version(),
  },
  indices: [
    { name: 'hold_once', columns: ['operatorId', 'kind', 'subjectId'], unique: true, where: 'released_at is null' },
  ],
  checks: [
    { name: 'hold_kind', expression: KINDS },
    {
      name: 'hold_released',
      expression:
        '(released_at is null) = (released_because is null) and (released_at is null) = (released_by is null)',
    },
  ],
  foreignKeys: [toMember('hold_placed_by', 'placedBy'), toMember('hold_released_by', 'releasedBy')],
});

/** That something was noted to be past its period of keeping: once, and told then. */
export interface PastKeepingRow {
  operatorId: string;
  kind: HoldKind;
  subjectId: string;
  notedAt: string;
}

export const PastKeepingTable = new EntitySchema<PastKeepingRow>({
  name: 'past_keeping',
  columns: { operatorId: key(), kind: text({ primary: true }), subjectId: key(), notedAt: instant() },
  checks: [{ name: 'past_keeping_kind', expression: KINDS }],
  foreignKeys: [toOperator('past_keeping_operator')],
});
