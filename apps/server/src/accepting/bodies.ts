import { ApiProperty } from '@nestjs/swagger';
import { IsBoolean } from 'class-validator';
import { Nested, OneOf, SignBody, Text } from '../http/fields.js';

const ROLES = ['commander', 'dispatcher'] as const;

export class AcceptanceBody {
  @OneOf(ROLES, { description: 'As whom: the commander accepts, the dispatcher acknowledges the limits.' })
  role!: (typeof ROLES)[number];

  @ApiProperty({ description: 'False when it is declined.' })
  @IsBoolean()
  accepted!: boolean;

  @Text(1000, { description: 'Why it is declined; needed then.', optional: true })
  reason?: string;

  @Nested(() => SignBody, { description: 'The signature.' })
  sign!: SignBody;
}

export class AcceptanceQuery {
  @OneOf(ROLES, { description: 'As whom.' })
  role!: (typeof ROLES)[number];

  @OneOf(['yes', 'no'], { description: 'Whether it is accepted.' })
  answer!: 'yes' | 'no';
}
