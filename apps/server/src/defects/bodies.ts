/** What the acts on a defect are told by HTTP. Each class checks shape only; the rules are in libs/deferrals. */
import { ApiProperty, ApiPropertyOptional } from '@nestjs/swagger';
import { IsBoolean, IsInt, IsOptional, Max, Min } from 'class-validator';
import { Digits, Id, Instant, Nested, NestedList, OneOf, SignBody, Text, Texts } from '../http/fields.js';

const LEFT_KINDS = [
  'breaker',
  'lock-pin',
  'valve-position',
  'connector-capped',
  'panel-open',
  'equipment-removed',
  'placard',
  'tool',
] as const;

const WHEN_FOUND = ['before-moving', 'own-power', 'after-take-off'] as const;

const DOCUMENT_KINDS = ['cdl', 'nef', 'approved-data', 'design-approval', 'permit', 'authority-document'] as const;

/** Six hundred thousand hours, in minutes. */
const MOST_ON_A_COUNTER = 36_000_000;

/** The failed item: one unit, or several names when it is one of these and nobody knows which. */
export class ItemBody {
  @Text(40, { description: 'MEL entry number.', example: '80-11-01' })
  entry!: string;

  @Texts(40, 40, {
    description: 'The failed unit, or the names of which one failed when nobody knows which.',
    example: ['1'],
  })
  units!: string[];
}

export class WriteUpBody {
  @Id({ description: 'The aircraft.' })
  aircraft!: string;

  @OneOf(['technician', 'crew', 'cabin'], { description: 'Who found it.' })
  origin!: 'technician' | 'crew' | 'cabin';

  @Text(4000, { description: 'What was seen, in plain text.' })
  description!: string;

  @Instant({ description: 'When it was written in the log, with the offset as written there.' })
  recordedAt!: string;

  @Instant({ description: 'When it happened, if anybody wrote that down.', optional: true })
  occurredAt?: string;

  @Text(40, { description: 'Number of the log sheet.', optional: true })
  sheet?: string;

  @Digits(2, { description: 'System (ATA chapter), two digits.', optional: true, example: '80' })
  system?: string;

  @Text(200, { description: 'The message the aircraft showed.', optional: true })
  faultMessage?: string;

  @OneOf(WHEN_FOUND, { description: 'Where its flight was when it was found, if anybody said.', optional: true })
  whenFound?: (typeof WHEN_FOUND)[number];

  @Text(1000, { description: 'Why it is entered late; needed when it is.', optional: true })
  lateReason?: string;

  @Nested(() => ItemBody, { description: 'The failed item, when it is known already.', optional: true })
  item?: ItemBody;
}

export class IdentifyBody extends ItemBody {}

/** Something left altered on the aircraft. */
export class LeftBody {
  @Id({ description: 'The thing, where it is on the aircraft already for another open item.', optional: true })
  id?: string;

  @OneOf(LEFT_KINDS, { description: 'What kind of thing it is.' })
  kind!: (typeof LEFT_KINDS)[number];

  @Text(200, { description: 'Where it is: panel and position.' })
  where!: string;

  @Text(40, { description: 'Number on its collar, streamer, placard or label.' })
  tag!: string;

  @Text(400, { description: 'How it is undone.' })
  undo!: string;
}

/** A basis other than an MEL row. */
export class DocumentBody {
  @OneOf(DOCUMENT_KINDS, { description: 'What kind of document.' })
  kind!: (typeof DOCUMENT_KINDS)[number];

  @Text(200, { description: 'Number or manual reference, with revision.' })
  reference!: string;

  @Text(200, { description: 'Who issued it.' })
  issuedBy!: string;

  @Text(1000, { description: "The limit in the document's own terms." })
  limit!: string;

  @Text(200, { description: 'The interval it gives, such as "10 calendar-days".', optional: true })
  interval?: string;

  @Instant({
    description: 'From when that counts, where the document states it; absent: by the settings.',
    optional: true,
  })
  startsAt?: string;

  @Instant({ description: 'Its own last instant (exclusive).', optional: true })
  until?: string;
}

/** From when use counts, where a document states it: an instant, or a counter with what it read later. */
export class StatedStartBody {
  @Instant({ description: 'An instant; or the three below.', optional: true })
  at?: string;

  @ApiPropertyOptional({ description: 'The counter at the start; hours in whole minutes.', type: 'integer' })
  @IsOptional()
  @IsInt()
  @Min(0)
  @Max(MOST_ON_A_COUNTER)
  counter?: number;

  @ApiPropertyOptional({ description: 'What the same counter read later.', type: 'integer' })
  @IsOptional()
  @IsInt()
  @Min(0)
  @Max(MOST_ON_A_COUNTER)
  reading?: number;

  @Instant({ description: 'When it read that.', optional: true })
  readAt?: string;

  @Text(200, { description: 'The document that states the start, with its reference.' })
  document!: string;
}

export class DeferBody {
  @Nested(() => ItemBody, { description: 'The failed item; needed for an MEL row.', optional: true })
  item?: ItemBody;

  @Text(20, { description: 'The row of the MEL entry.', optional: true })
  row?: string;

  @Nested(() => DocumentBody, { description: 'A basis other than an MEL row.', optional: true })
  document?: DocumentBody;

  @Nested(() => StatedStartBody, {
    description: 'From when use counts, where a document states it; absent: by row and settings.',
    optional: true,
  })
  start?: StatedStartBody;

  @Nested(() => SignBody, { description: 'The signature.' })
  sign!: SignBody;
}

/** Another row of the same entry takes the place of the one in force. */
export class ChangeRowBody {
  @Text(20, { description: 'The row that it is to stand on from now on.' })
  row!: string;

  @Text(1000, { description: 'Why the row is changed.' })
  reason!: string;

  @Id({
    description:
      'The closed defect of the other unit that had asked for the stricter row; then maintenance control signs, and the limit of that row ends with it.',
    optional: true,
  })
  causeClosed?: string;

  @Nested(() => SignBody, { description: 'The signature.' })
  sign!: SignBody;
}

export class ProcedureBody {
  @Text(120, { description: 'Which work: `<entry>/<row>/<procedure>`.', example: '80-11-01/1/M1' })
  work!: string;

  @Instant({ description: 'When it was done.' })
  doneAt!: string;

  @Id({ description: 'The flight it was done for, where it is owed before each departure.', optional: true })
  forFlight?: string;

  @Text(1000, { description: 'Why it is entered after the aircraft left; needed when it is.', optional: true })
  lateReason?: string;

  @NestedList(() => LeftBody, 20, { description: 'What it leaves altered on the aircraft.' })
  leaves!: LeftBody[];

  @Nested(() => SignBody, { description: 'The signature.' })
  sign!: SignBody;
}

export class PlacardBody {
  @Text(400, { description: 'The text on the placard.' })
  text!: string;

  @Text(200, { description: 'Where it is fitted.' })
  where!: string;

  @Text(40, { description: 'Number on the placard.' })
  tag!: string;

  @Nested(() => SignBody, { description: 'The signature.' })
  sign!: SignBody;
}

export class UndoBody {
  @Texts(40, 80, { description: 'Ids of the things that were undone.' })
  items!: string[];

  @Nested(() => SignBody, { description: 'The signature.' })
  sign!: SignBody;
}

export class RectifyBody {
  @Text(4000, { description: 'What was done.' })
  workDone!: string;

  @Text(200, { description: 'Manual reference with its revision.' })
  reference!: string;

  @Text(80, { description: 'Part number of the part fitted.', optional: true })
  partNumber?: string;

  @Text(80, { description: 'Serial number of the part fitted.', optional: true })
  serialOn?: string;

  @Text(80, { description: 'Serial number of the part removed.', optional: true })
  serialOff?: string;

  @ApiProperty({ description: 'False while something of the work is still to be done.' })
  @IsBoolean()
  complete!: boolean;

  @ApiProperty({ description: 'True when the card or the list asks for a test.' })
  @IsBoolean()
  testAsked!: boolean;

  @ApiProperty({ description: 'True when the card or the list asks for an independent inspection.' })
  @IsBoolean()
  inspectionAsked!: boolean;

  @Nested(() => SignBody, { description: 'The signature.' })
  sign!: SignBody;
}

export class TestBody {
  @Text(1000, { description: 'Which test.' })
  test!: string;

  @OneOf(['good', 'not-good'], { description: 'Its result.' })
  result!: 'good' | 'not-good';

  @Nested(() => SignBody, { description: 'The signature.' })
  sign!: SignBody;
}

export class RestoreBody {
  @Text(200, { description: 'Manual reference with its revision.' })
  reference!: string;

  @Nested(() => SignBody, { description: 'The signature.' })
  sign!: SignBody;
}

/** The other answers to a write-up: no fault found, raised in error. */
export class AnswerBody {
  @Text(2000, { description: 'What was checked, or why it was raised in error.' })
  words!: string;

  @Text(200, { description: 'Manual reference with its revision, where a check was made.', optional: true })
  reference?: string;

  @Nested(() => SignBody, { description: 'The signature.' })
  sign!: SignBody;
}
