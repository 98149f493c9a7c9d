import { Id, OneOf, Text } from '../../http/fields.js';

export const ADDRESS_KINDS = ['email', 'webhook'] as const;
export const ADDRESS_OWNERS = ['me', 'operator'] as const;

export class TellCodeBody {
  @Text(20, { description: 'The code that was sent to the mailbox.', example: '1234 5678' })
  code!: string;
}

export class AddAddressBody {
  @OneOf(ADDRESS_KINDS, { description: 'A mailbox, or an endpoint of a program.' })
  kind!: (typeof ADDRESS_KINDS)[number];

  @Text(500, { description: 'The mailbox, or the http(s) address.', example: 'engineer@example.org' })
  address!: string;

  @Text(80, { description: 'What you call it.' })
  label!: string;

  @OneOf(ADDRESS_OWNERS, {
    description: 'Your own, which ends when you leave, or that of the operator. Absent: your own.',
    optional: true,
  })
  of?: (typeof ADDRESS_OWNERS)[number];

  @Id({ description: 'One aircraft; absent for every aircraft of the operator.', optional: true })
  aircraft?: string;
}
