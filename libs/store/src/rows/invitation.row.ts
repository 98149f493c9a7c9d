import { EntitySchema } from 'typeorm';
import type { Role } from '#mel';
import { id, instant, key, nullable, text, texts, version } from './column.js';
import { toMember, toOperator, within } from './foreign-key.js';

/**
 * An invitation to work for this operator, for whoever holds its code and has an account already. It begins when an
 * administrator makes it and ends when it is taken up, withdrawn, or over.
 */
export interface InvitationRow {
  operatorId: string;
  id: string;
  /** SHA-256 of the code, which is told once. */
  codeHash: string;
  roles: Role[];
  organisationId: string | null;
  invitedBy: string;
  invitedAt: string;
  untilAt: string;
  takenUpBy: string | null;
  takenUpAt: string | null;
  withdrawnAt: string | null;
  version: number;
}

export const InvitationTable = new EntitySchema<InvitationRow>({
  name: 'invitation',
  columns: {
    operatorId: key(),
    id: key(),
    codeHash: text(),
    roles: texts(),
    organisationId: id(nullable),
    invitedBy: id(),
    invitedAt: instant(),
    untilAt: instant(),
    takenUpBy: id(nullable),
    takenUpAt: instant(nullable),
    withdrawnAt: instant(nullable),
    version: version(),
  },
  uniques: [{ name: 'invitation_code', columns: ['codeHash'] }],
  checks: [{ name: 'invitation_taken_up', expression: '(taken_up_by is null) = (taken_up_at is null)' }],
  foreignKeys: [
    toOperator('invitation_operator'),
    within('invitation_organisation', 'organisation', 'organisationId'),
    toMember('invitation_invited_by', 'invitedBy'),
    toMember('invitation_taken_up_by', 'takenUpBy'),
  ],
});
