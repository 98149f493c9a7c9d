import { ApiProperty } from '@nestjs/swagger';
import { IsBoolean } from 'class-validator';
import { Nested, OneOf, SignBody, Text } from '../http/fields.js';

export class RecurrenceBody {
  @ApiProperty({ description: 'Whether it is a repetitive defect.' })
  @IsBoolean()
  repetitive!: boolean;

  @Text(2000, { description: 'Why, and what is done about it.' })
  reason!: string;

  @Nested(() => SignBody, { description: 'The signature.' })
  sign!: SignBody;
}

export class RecurrenceQuery {
  @OneOf(['yes', 'no'], { description: 'Whether it is repetitive.' })
  answer!: 'yes' | 'no';
}
