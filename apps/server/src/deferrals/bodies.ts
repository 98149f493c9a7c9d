/** What extensions and documents of authorities are told by HTTP. The rules are in libs/deferrals. */
import { ApiProperty, ApiPropertyOptional } from '@nestjs/swagger';
import { ArrayMinSize, IsArray, IsBoolean, IsIn, IsInt, IsOptional, Max, Min } from 'class-validator';
import { factOf } from '#mel';
import { Instant, Nested, OneOf, SignBody, Text, Texts } from '../http/fields.js';

const MOST_DAYS = 366;
const KINDS_OF_FLIGHT = [...(factOf('flight.kind')?.choices ?? [])];

export class AskExtensionBody {
  @Text(1000, { description: "The reason, outside the operator's control." })
  reason!: string;

  @ApiProperty({ description: "True when the reason lies outside the operator's control." })
  @IsBoolean()
  outsideOperatorsControl!: boolean;

  @Text(1000, { description: 'Why it was not rectified in time.' })
  whyNotFixed!: string;

  @Text(1000, { description: 'The plan to rectify it: when, where, by whom.' })
  plan!: string;

  @Text(400, { description: 'Parts that are waited for, with their orders.', optional: true })
  parts?: string;

  @ApiPropertyOptional({ description: 'Calendar days; absent asks for the longest allowed.', type: 'integer' })
  @IsOptional()
  @IsInt()
  @Min(1)
  @Max(MOST_DAYS)
  days?: number;

  @Text(200, { description: "Reference of the authority's agreement, where it is needed.", optional: true })
  agreement?: string;
}

export class CloseRequestBody {
  @Text(1000, { description: 'Why it is declined or withdrawn.' })
  because!: string;
}

export class GrantExtensionBody {
  @Nested(() => SignBody, { description: 'The signature of the person who grants it.' })
  sign!: SignBody;
}

export class NoticeBody {
  @OneOf(['sent', 'acknowledged'], { description: 'What happened to the notice.' })
  what!: 'sent' | 'acknowledged';

  @Instant({ description: 'When it was sent, or acknowledged by the authority.' })
  at!: string;

  @Text(200, { description: 'Reference: number of the message, name of the inspector.' })
  reference!: string;
}

export class AuthorityDocumentBody {
  @OneOf(['permit', 'authority-document'], { description: 'A permit to fly, or another document.' })
  kind!: 'permit' | 'authority-document';

  @Text(80, { description: 'Its number.', example: 'PF-12' })
  number!: string;

  @Text(200, { description: 'The authority that issued it.' })
  authority!: string;

  @Text(1000, { description: "The limit in the document's own terms." })
  limit!: string;

  @Texts(20, 400, { description: 'Its other conditions, in its own terms.', optional: true })
  conditions?: string[];

  @Instant({ description: 'From when it is good.' })
  from!: string;

  @Instant({ description: 'Until when it is good (exclusive).' })
  until!: string;

  @ApiPropertyOptional({ description: 'How many flights; absent when it names no number.', type: 'integer' })
  @IsOptional()
  @IsInt()
  @Min(1)
  @Max(1000)
  flights?: number;

  @ApiPropertyOptional({
    description: 'The kinds of flight it allows; absent when it names none.',
    enum: KINDS_OF_FLIGHT,
    isArray: true,
  })
  @IsOptional()
  @IsArray()
  @ArrayMinSize(1)
  @IsIn(KINDS_OF_FLIGHT, { each: true })
  kindsOfFlight?: string[];

  @Nested(() => SignBody, { description: 'The signature of the person who entered it.' })
  sign!: SignBody;
}
