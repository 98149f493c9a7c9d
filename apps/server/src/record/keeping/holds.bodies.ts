import { HOLD_KINDS, type HoldKind } from '#store';
import { Id, OneOf, Text } from '../../http/fields.js';

export class HoldBody {
  @OneOf(HOLD_KINDS, { description: 'What is held: a person, the log of an aircraft, or a defect.' })
  kind!: HoldKind;

  @Id({ description: 'Of the person, the aircraft or the defect.' })
  subject!: string;

  @Text(300, { description: 'Why, for the record: leave names out.' })
  reason!: string;
}

export class ReleaseHoldBody {
  @Text(300, { description: 'Why it need not be held any longer, for the record: leave names out.' })
  reason!: string;
}
