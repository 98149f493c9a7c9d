import type { Privilege } from '#deferrals';
import { Id, Instant, Nested, OneOf, SignBody, Text } from '../http/fields.js';

export class SignInBody {
  @Text(80, { description: 'Your sign-in name.' })
  name!: string;

  @Text(200, { description: 'Your secret.' })
  secret!: string;
}

export class ChangeSecretBody {
  @Text(200, { description: 'The secret that you have.' })
  secret!: string;

  @Text(200, { description: 'The new one, 12 characters or more.' })
  fresh!: string;
}

export class ChooseOperatorBody {
  @Id({ description: 'One of your operators.' })
  operator!: string;
}

export class LeavingBody {
  @Text(300, { description: 'Why, for the record: no more than is needed.' })
  reason!: string;
}

export class ErasureBody {
  @Text(300, { description: 'Why, for the record: without the name.' })
  reason!: string;

  @Nested(() => SignBody, { description: 'The signature of who erases.' })
  sign!: SignBody;
}

/** Judging, concurring and extending are nobody's for one time. */
const ONE_OFF_PRIVILEGES = ['defer', 'sign-procedure', 'inspect', 'release'] as const satisfies readonly Privilege[];

export type OneOffPrivilege = (typeof ONE_OFF_PRIVILEGES)[number];

export class OneOffQuery {
  @Id({ description: 'The open defect it is for.' })
  defect!: string;

  @OneOf(ONE_OFF_PRIVILEGES, { description: 'What one signature may be given for.' })
  privilege!: OneOffPrivilege;

  @Instant({ description: 'Until when it may be used.' })
  validUntil!: string;

  @Text(400, { description: 'Why nobody else can, and what makes this person fit for it.' })
  because!: string;
}

export class OneOffBody extends OneOffQuery {
  @Nested(() => SignBody, { description: 'The signature of who issues it.' })
  sign!: SignBody;
}
