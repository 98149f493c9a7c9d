import type { Privilege } from '#deferrals';
import type { Role } from '#mel';
import { Matches } from 'class-validator';
import { Id, Instant, Line, Nested, Several, SignBody, Text } from '../http/fields.js';

export const ALL_ROLES = [
  'technician',
  'maintenance-control',
  'engineer',
  'commander',
  'dispatcher',
  'quality',
  'mel-engineer',
  'administrator',
] as const satisfies readonly Role[];

export const ALL_PRIVILEGES = [
  'write-up',
  'defer',
  'concur',
  'sign-procedure',
  'inspect',
  'release',
  'extend',
  'judge-combination',
  'confirm-card',
] as const satisfies readonly Privilege[];

export const LICENCE_CATEGORIES = ['A', 'B1', 'B2', 'C'] as const;

export class AccountBody {
  @Line(120, { description: 'Name, as it stands in the licence.' })
  name!: string;

  @Line(60, { description: 'Licence or certificate number.', optional: true })
  licence?: string;

  /** Of one script and one size of letters: none can be made that is read as the name of somebody else. */
  @Text(80, {
    description:
      'Sign-in name; nobody else on this server has it. Small letters a to z, digits, and . _ @ + - in it.',
  })
  @Matches(/^[a-z0-9][a-z0-9._@+-]*$/, {
    message: '$property is made of small letters a to z, digits, and . _ @ + - in it',
  })
  signInName!: string;

  @Id({ description: 'The organisation that the person comes from.', optional: true })
  organisation?: string;

  @Several(ALL_ROLES, { description: 'Roles.' })
  roles!: Role[];
}

export class RolesBody {
  @Several(ALL_ROLES, { description: 'The roles from now on.' })
  roles!: Role[];

  @Text(300, { description: 'Why, for the record: no more than is needed.' })
  reason!: string;
}

export class ReasonBody {
  @Text(300, { description: 'Why, for the record: no more than is needed.' })
  reason!: string;
}

/** The scope of a standing authorisation, as its statement names it. */
export class AuthorisationQuery {
  @Line(40, { description: 'Its number.' })
  number!: string;

  @Id({ description: 'The organisation that grants it.' })
  organisation!: string;

  @Text(400, { description: 'Aircraft types, joined by commas.' })
  aircraftTypes!: string;

  @Text(20, { description: 'Licence categories, joined by commas.', optional: true })
  licenceCategories?: string;

  @Text(200, { description: 'What it lets its holder do, joined by commas.' })
  privileges!: string;

  @Instant({ description: 'Valid from.' })
  validFrom!: string;

  @Instant({ description: 'Valid until before.', optional: true })
  validUntil?: string;
}

export class AuthorisationBody extends AuthorisationQuery {
  @Nested(() => SignBody, { description: 'The signature of who grants it.' })
  sign!: SignBody;
}

export class InvitationBody {
  @Several(ALL_ROLES, { description: 'Roles of whoever takes it up.' })
  roles!: Role[];

  @Id({ description: 'The organisation that the person comes from.', optional: true })
  organisation?: string;
}

export class CodeBody {
  @Text(60, { description: 'Code of the invitation.' })
  code!: string;
}

export class TakeUpBody extends CodeBody {
  @Nested(() => SignBody, { description: 'The signature of who takes it up.' })
  sign!: SignBody;
}
