import { EntitySchema } from 'typeorm';
import type { Role } from '#mel';
import { id, instant, key, nullable, texts, version } from './column.js';
import { to, toOperator, within } from './foreign-key.js';

/** That a person works for an operator, in which roles and when: from `validFrom`, until before `validUntil`. */
export interface MembershipRow {
  operatorId: string;
  personId: string;
  organisationId: string | null;
  roles: (Role | 'cabin')[];
  validFrom: string;
  validUntil: string | null;
  /** Access is locked from here on, until somebody unlocks it. */
  lockedAt: string | null;
  version: number;
}

export const MembershipTable = new EntitySchema<MembershipRow>({
  name: 'membership',
  columns: {
    operatorId: key(),
    personId: key(),
    organisationId: id(nullable),
    roles: texts(),
    validFrom: instant(),
    validUntil: instant(nullable),
    lockedAt: instant(nullable),
    version: version(),
  },
  indices: [{ name: 'membership_of_person', columns: ['personId'] }],
  foreignKeys: [
    toOperator('membership_operator'),
    to('membership_person', 'person', 'personId'),
    within('membership_organisation', 'organisation', 'organisationId'),
  ],
});
