import { Id, Text, YesNo } from '../http/fields.js';

export class MakeFeedBody {
  @Text(80, { description: 'What you call it, such as the device that reads it.' })
  label!: string;

  @Id({ description: 'One aircraft; absent for every aircraft of the operator.', optional: true })
  aircraft?: string;

  @YesNo({
    description: 'Your own feed: every deferral of every operator you work for at the time it is read.',
    optional: true,
  })
  everywhere?: boolean;
}
