/** What is told by HTTP of things left for a defect, of its swap to another position and of its second write-up. */
import { Id, Nested, NestedList, SignBody, Text } from '../http/fields.js';
import { LeftBody } from './bodies.js';

/** Things left altered for a defect besides those of a procedure. */
export class LeftAlteredBody {
  @NestedList(() => LeftBody, 20, { description: 'What is left altered.' })
  items!: LeftBody[];

  @Nested(() => SignBody, { description: 'The signature.' })
  sign!: SignBody;
}

/** Where a thing that was left is after the swap. */
export class MovedBody {
  @Id({ description: 'The thing left on the aircraft.' })
  item!: string;

  @Text(200, { description: 'Where it is now.' })
  where!: string;
}

/** The failed part was swapped with a good one at another position. */
export class SwapUnitBody {
  @Text(40, { description: 'The unit that was failed.' })
  fromUnit!: string;

  @Text(40, { description: 'The unit that is failed now.' })
  toUnit!: string;

  @Text(1000, { description: 'Why it was swapped.' })
  reason!: string;

  @Text(80, { description: 'Serial number of the failed part.', optional: true })
  serial?: string;

  @NestedList(() => MovedBody, 40, { description: 'Where each thing left for it is now.' })
  moved!: MovedBody[];

  @Nested(() => SignBody, { description: 'The signature.' })
  sign!: SignBody;
}

/** The write-up is of a unit that is open under deferral already. */
export class JoinBody {
  @Id({ description: 'The open item that it is another entry of.' })
  other!: string;

  @Text(1000, { description: 'Why it is the same defect.' })
  reason!: string;

  @Nested(() => SignBody, { description: 'The signature.' })
  sign!: SignBody;
}
