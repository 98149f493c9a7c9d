/** What the acts from the work to the release are told by HTTP. */
import { ApiProperty, ApiPropertyOptional } from '@nestjs/swagger';
import { IsBoolean, IsOptional } from 'class-validator';
import { Nested, OneOf, SignBody, Text, Texts } from '../http/fields.js';

export class InspectBody {
  @Text(1000, { description: 'What the second person looked at and found.' })
  findings!: string;

  @Text(1000, {
    description: 'Why one of those who did the work inspects it: an unforeseen case.',
    optional: true,
  })
  unforeseen?: string;

  @Nested(() => SignBody, { description: 'The signature.' })
  sign!: SignBody;
}

/** What somebody saw who went over the aircraft after the work. */
export class VerifiedBody {
  @ApiProperty({ description: 'Every tool is accounted for.' })
  @IsBoolean()
  toolsAccounted!: boolean;

  @ApiProperty({ description: 'Every panel and cowl is closed.' })
  @IsBoolean()
  panelsClosed!: boolean;

  @ApiProperty({ description: 'What is left on the aircraft is what the register says.' })
  @IsBoolean()
  registerChecked!: boolean;

  @Text(1000, { description: 'Remarks.', optional: true })
  remarks?: string;
}

export class VerificationBody extends VerifiedBody {
  @Nested(() => SignBody, { description: 'The signature.' })
  sign!: SignBody;
}

export class ReleaseBody {
  @OneOf(['closed', 'stays-open'], {
    description: 'Whether the defect is closed, or the work is released and the defect stays open.',
    optional: true,
  })
  outcome?: 'closed' | 'stays-open';

  @Texts(20, 400, { description: 'What stays open: incomplete work is stated in the release.', optional: true })
  staysOpen?: string[];

  @ApiPropertyOptional({ description: 'True when a B2 holder releases a minor task of their own.' })
  @IsOptional()
  @IsBoolean()
  asMinorTask?: boolean;

  @Nested(() => VerifiedBody, {
    description: 'The general verification, where it is signed together with the release.',
    optional: true,
  })
  verified?: VerifiedBody;

  @Nested(() => SignBody, { description: 'The signature under the release statement.' })
  sign!: SignBody;
}
