/** What work on cards is told by HTTP. Each class checks shape only; the rules are in libs/deferrals. */
import { ApiProperty, ApiPropertyOptional } from '@nestjs/swagger';
import { IsInt, IsISO8601, IsNumber, Matches, Max, Min, ValidateIf } from 'class-validator';
import { Id, Nested, NestedList, OneOf, PasskeyBody, SignBody, Text } from '../http/fields.js';

const IfGiven = () => ValidateIf((_, value: unknown) => value !== undefined);

export class StartCardBody {
  @Text(40, { description: 'Which card.', example: 'start-valve-by-hand' })
  card!: string;

  @Text(120, { description: 'The procedure it does, for a card that a procedure names.', optional: true })
  procedure?: string;

  @Id({ description: 'The flight it is done for, where it is owed before each departure.', optional: true })
  forFlight?: string;
}

export class ReadingBody {
  @Text(40, { description: 'Which reading of the step.' })
  id!: string;

  @ApiProperty({ description: 'The value read.' })
  @IsNumber()
  value!: number;

  @Text(20, { description: 'Its unit.' })
  unit!: string;
}

const RESULTS = ['done', 'measured', 'renewed', 'begun', 'waited', 'ran', 'looked', 'out', 'in'] as const;

export class SecondPersonBody {
  @Id({ description: 'Who is there as the second person.' })
  person!: string;

  @Text(2000, { description: 'The statement that was shown to the second person, word for word.', optional: true })
  statement?: string;

  @Text(200, { description: "The second person's own secret.", optional: true })
  secret?: string;

  @Nested(() => PasskeyBody, {
    description: 'Or a passkey of the second person that signed this, asked for by `card-seconds`.',
    optional: true,
  })
  passkey?: PasskeyBody;
}

/** What a passkey of a second person is asked to sign: one statement, for one step of one card. */
export class SecondAskedBody {
  @Id({ description: 'The work on the card.' })
  work!: string;

  @Text(40, { description: 'Which step.' })
  step!: string;

  @Id({ description: 'Who is there as the second person.' })
  person!: string;

  @Text(2000, { description: 'The statement that was shown to the second person, word for word.' })
  statement!: string;
}

export class EquipmentBody {
  @Text(200, { description: 'Which need of the step, as the card calls it.', example: 'pressure gauge' })
  what!: string;

  @Text(60, { description: 'The number that stands on it.' })
  number!: string;

  @ApiPropertyOptional({ description: 'Its last day of calibration, YYYY-MM-DD.', example: '2027-03-01' })
  @IfGiven()
  @Matches(/^\d{4}-\d\d-\d\d$/, { message: '$property must be a day such as 2027-03-01' })
  @IsISO8601({ strict: true })
  calibratedUntil?: string;
}

export class StepBody {
  @Id({ description: 'The work on the card, by the id it was started under.' })
  work!: string;

  @Text(40, { description: 'Which step.' })
  step!: string;

  @OneOf(RESULTS, {
    description:
      'done: do, verify. measured: value, unit. renewed: partNumber, batch, count, certificate. begun: a wait or a run begins (minutes, where the aircraft shows them). waited: it is over. ran: readings. looked: findings. out, in: count and number.',
  })
  result!: (typeof RESULTS)[number];

  @ApiPropertyOptional({ description: 'The value read.' })
  @IfGiven()
  @IsNumber()
  value?: number;

  @Text(20, { description: 'Its unit.', optional: true })
  unit?: string;

  @Text(60, { description: 'Part number of what was fitted new.', optional: true })
  partNumber?: string;

  @Text(60, { description: 'Batch, serial or certificate number of what was fitted new.', optional: true })
  batch?: string;

  @ApiPropertyOptional({ description: 'How many.', type: 'integer' })
  @IfGiven()
  @IsInt()
  @Min(0)
  @Max(200)
  count?: number;

  @ApiPropertyOptional({ description: 'Minutes that the aircraft shows, read from it.', type: 'integer' })
  @IfGiven()
  @IsInt()
  @Min(0)
  @Max(1440)
  minutes?: number;

  @Text(40, { description: 'Number on its collar, streamer, placard or tool.', optional: true })
  number?: string;

  @NestedList(() => ReadingBody, 20, { description: 'Readings of a run.', optional: true })
  readings?: ReadingBody[];

  @Text(2000, { description: 'What the look afterwards found.', optional: true })
  findings?: string;

  @Text(60, { description: 'Reference of its release certificate, where the card asks.', optional: true })
  certificate?: string;

  @Nested(() => SecondPersonBody, {
    description: 'The second person, who signs here without being signed in.',
    optional: true,
  })
  second?: SecondPersonBody;

  @NestedList(() => EquipmentBody, 20, { description: 'Which equipment was used.', optional: true })
  used?: EquipmentBody[];
}

export class InspectionBody {
  @Id({ description: 'The work on the card.' })
  work!: string;

  @Text(40, { description: 'Which step.' })
  step!: string;

  @Text(2000, { description: 'What the inspection found.' })
  findings!: string;

  @Nested(() => SignBody, { description: 'The signature.' })
  sign!: SignBody;
}

export class CardSignatureBody {
  @Id({ description: 'The work on the card.' })
  work!: string;

  @Nested(() => SignBody, { description: 'The signature.' })
  sign!: SignBody;
}

export class CardStopBody extends CardSignatureBody {
  @Text(1000, { description: 'Why it is stopped.' })
  reason!: string;
}

export class CardFileBody {
  @Text(200, { description: 'Name of the file, for errors.', example: 'cards.yaml' })
  file!: string;

  @Text(5_000_000, { description: 'The text of the file, YAML or JSON.' })
  text!: string;
}

export class ManualRevisionBody {
  @Text(200, { description: 'The manual.', example: 'K-AMM' })
  manual!: string;

  @Text(200, { description: 'The task; absent: the whole manual.', optional: true })
  task?: string;

  @Text(200, { description: 'The revision.', example: '13' })
  revision!: string;

  @ApiProperty({ description: 'The day it was issued, YYYY-MM-DD.', example: '2026-03-01' })
  @Matches(/^\d{4}-\d\d-\d\d$/, { message: '$property must be a day such as 2026-03-01' })
  @IsISO8601({ strict: true })
  issuedOn!: string;
}

export class ConfirmationQuery {
  @Text(200, { description: 'The aircraft type.' })
  aircraftType!: string;

  @Text(40, { description: 'Which card.' })
  card!: string;

  @Text(200, { description: 'The revision it was held against.' })
  against!: string;
}

export class ConfirmationBody extends ConfirmationQuery {
  @Nested(() => SignBody, { description: 'The signature.' })
  sign!: SignBody;
}
