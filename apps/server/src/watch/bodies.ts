import { Id, Text } from '../http/fields.js';

export class MakeFeedBody {
  @Text(80, { description: 'What you call it, such as the device that reads it.' })
  label!: string;

  @Id({ description: 'One aircraft; absent for every aircraft of the operator.', optional: true })
  aircraft?: string;
}
