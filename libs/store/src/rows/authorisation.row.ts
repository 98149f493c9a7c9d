import { EntitySchema } from 'typeorm';
import { id, instant, key, nullable, text, texts, version } from './column.js';
import { toMember, within } from './foreign-key.js';

/** What an organisation lets a person do for an operator. Valid until before `validUntil` or `revokedAt`. */
export interface AuthorisationRow {
  operatorId: string;
  id: string;
  personId: string;
  organisationId: string;
  number: string;
  aircraftTypes: string[];
  licenceCategories: string[];
  privileges: string[];
  validFrom: string;
  validUntil: string | null;
  revokedAt: string | null;
  /** For a one-off: the one defect it is for, who issued it in which role, and why. All null otherwise. */
  defectId: string | null;
  issuedBy: string | null;
  issuedAs: string | null;
  because: string | null;
  version: number;
}

export const AuthorisationTable = new EntitySchema<AuthorisationRow>({
  name: 'authorisation',
  columns: {
    operatorId: key(),
    id: key(),
    personId: id(),
    organisationId: id(),
    number: text(),
    aircraftTypes: texts(),
    licenceCategories: texts(),
    privileges: texts(),
    validFrom: instant(),
    validUntil: instant(nullable),
    revokedAt: instant(nullable),
    defectId: id(nullable),
    issuedBy: id(nullable),
    issuedAs: text(nullable),
    because: text(nullable),
    version: version(),
  },
  uniques: [{ name: 'authorisation_number', columns: ['operatorId', 'organisationId', 'number'] }],
  indices: [{ name: 'authorisation_of_person', columns: ['operatorId', 'personId'] }],
  foreignKeys: [
    toMember('authorisation_membership', 'personId'),
    within('authorisation_organisation', 'organisation', 'organisationId'),
    within('authorisation_defect', 'defect', 'defectId'),
    toMember('authorisation_issued_by', 'issuedBy'),
  ],
  checks: [
    {
      name: 'authorisation_one_off',
      expression: `num_nulls(defect_id, issued_by, issued_as, because) in (0, 4)
        and (defect_id is null or valid_until is not null)`,
    },
  ],
});
