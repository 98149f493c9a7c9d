import { Instant, Nested, SignBody, Text } from '../http/fields.js';

/** What of an aircraft's record was lost, out of what it was made anew, and which authority was told. */
export class LossQuery {
  @Instant({ description: 'From when on something is missing.' })
  from!: string;

  @Instant({ description: 'Until when.' })
  until!: string;

  @Text(1000, { description: 'What was lost, and how.' })
  lost!: string;

  @Text(1000, { description: 'Out of what it was made anew: sheets, work orders, the record of the engine shop.' })
  madeFrom!: string;

  @Text(200, { description: 'The authority that was told.' })
  authority!: string;

  @Text(100, { description: 'The reference under which it was told.' })
  reference!: string;
}

export class LossBody extends LossQuery {
  @Nested(() => SignBody, { description: 'The signature.' })
  sign!: SignBody;
}
