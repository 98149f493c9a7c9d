import { ApiPropertyOptional } from '@nestjs/swagger';
import { IsInt, IsOptional, Max, Min } from 'class-validator';
import { Id, Nested, OneOf, SignBody, Text } from '../http/fields.js';
import { type FieldAsked, FIELDS_ASKED } from './correctable.js';

/** Something was mistyped. */
export class CorrectBody {
  @Id({ description: 'The act that is wrong, as its history names it; absent: the write-up.', optional: true })
  of?: string;

  @OneOf(FIELDS_ASKED, { description: 'What was mistyped. Some are refused, with what to do instead.' })
  field!: FieldAsked;

  @ApiPropertyOptional({ description: 'Which of several, from 0; absent: the first.', type: 'integer' })
  @IsOptional()
  @IsInt()
  @Min(0)
  @Max(99)
  part?: number;

  @Text(4000, { description: 'What it should read. The time in the log can only become earlier.' })
  now!: string;

  @Text(1000, { description: 'Why it is corrected.' })
  reason!: string;

  @Nested(() => SignBody, { description: 'The signature.' })
  sign!: SignBody;
}

/** A second person looked, and the correction is right. */
export class LookBody {
  @Id({ description: 'The correction that waits.' })
  asked!: string;

  @Nested(() => SignBody, { description: 'The signature.' })
  sign!: SignBody;
}

/** What was written is right: a second person looked, or whoever asked takes it back. */
export class StayBody {
  @Id({ description: 'The correction that waits.' })
  asked!: string;

  @Text(1000, { description: 'Why it stays as it is written.' })
  reason!: string;

  @Nested(() => SignBody, { description: 'The signature.' })
  sign!: SignBody;
}
