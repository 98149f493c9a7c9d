import type { CorrectableWord } from '#deferrals';
import { Nested, OneOf, SignBody, Text } from '../http/fields.js';
import { CORRECTABLE } from './correctable.js';

/** Something in the write-up was mistyped. */
export class CorrectBody {
  @OneOf(CORRECTABLE, { description: 'What was mistyped.' })
  field!: CorrectableWord;

  @Text(4000, { description: 'What it should read. The time in the log can only become earlier.' })
  now!: string;

  @Text(1000, { description: 'Why it is corrected.' })
  reason!: string;

  @Nested(() => SignBody, { description: 'The signature.' })
  sign!: SignBody;
}
