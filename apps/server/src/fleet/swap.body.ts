import { Id, Ids, Instant, NestedList, Text } from '../http/fields.js';

export class AllowedBody {
  @Id({ description: 'A planned flight.' })
  flight!: string;

  @Ids(200, { description: 'The aircraft that operations allow on it.' })
  aircraft!: string[];
}

/** An aircraft without a rotation of its own. */
export class SpareBody {
  @Id({ description: 'The aircraft.' })
  aircraft!: string;

  @Text(10, { description: 'Code of the station where it stands.' })
  at!: string;

  @Instant({ description: 'From when it is ready; absent means now.', optional: true })
  readyAt?: string;
}

/** Which rotations are looked at, and whom operations allow on each flight. Without the list no swap is offered. */
export class SwapBody {
  @Ids(40, {
    description: 'The aircraft whose rotations may change hands: all that is planned for them from now on.',
  })
  aircraft!: string[];

  @NestedList(() => AllowedBody, 400, { description: 'What operations allow, flight by flight.' })
  allowed!: AllowedBody[];

  @NestedList(() => SpareBody, 40, { description: 'Aircraft standing by.', optional: true })
  spares?: SpareBody[];
}
