/** What the acts on an aircraft's register are told by HTTP. Shape only; the rules are in libs/deferrals. */
import { ApiProperty } from '@nestjs/swagger';
import { IsBoolean } from 'class-validator';
import { LeftBody } from '../defects/bodies.js';
import { Id, Ids, Instant, Nested, NestedList, OneOf, SignBody, Text } from '../http/fields.js';

/** A modification, a directive or a permit that things are left altered under. */
export class OwnerDocumentBody {
  @OneOf(['modification', 'directive', 'permit'], { description: 'What kind of document.' })
  kind!: 'modification' | 'directive' | 'permit';

  @Text(120, { description: 'Its number, with revision.', example: 'MOD 27-114 revision 2' })
  reference!: string;

  @Instant({ description: 'Its last instant (exclusive); absent when it has no end.', optional: true })
  until?: string;
}

export class FoundBody {
  @NestedList(() => LeftBody, 20, { description: 'What was found on the aircraft.' })
  items!: LeftBody[];

  @Text(1000, { description: 'How it was found.', optional: true })
  remarks?: string;
}

export class FittedBody {
  @NestedList(() => LeftBody, 20, { description: 'What is left altered.' })
  items!: LeftBody[];

  @Nested(() => OwnerDocumentBody, { description: 'What it belongs to.' })
  owner!: OwnerDocumentBody;

  @Nested(() => SignBody, { description: 'The signature.' })
  sign!: SignBody;
}

/** Undone, or seen to be undone. */
export class ThingsBody {
  @Ids(40, { description: 'Ids of the things.' })
  items!: string[];

  @Nested(() => SignBody, { description: 'The signature.' })
  sign!: SignBody;
}

export class MoveBody {
  @Ids(40, { description: 'Ids of the things; all of one owner.' })
  items!: string[];

  @Id({ description: 'The open item they belong to from now on.', optional: true })
  defect?: string;

  @Nested(() => OwnerDocumentBody, { description: 'Or the document they belong to from now on.', optional: true })
  document?: OwnerDocumentBody;

  @ApiProperty({ description: 'True when the open item that has them keeps them too.' })
  @IsBoolean()
  together!: boolean;

  @Text(1000, { description: 'Why.' })
  reason!: string;

  @Nested(() => SignBody, { description: 'The signature.' })
  sign!: SignBody;
}

export class EndedBody {
  @Nested(() => OwnerDocumentBody, { description: 'The document that ended or was withdrawn.' })
  document!: OwnerDocumentBody;

  @Text(1000, { description: 'Why.' })
  reason!: string;

  @Nested(() => SignBody, { description: 'The signature.' })
  sign!: SignBody;
}

export class CorrectionBody {
  @Id({ description: 'The thing that was mistyped.' })
  item!: string;

  @OneOf(['where', 'tag'], { description: 'Its place, or the number on it.' })
  field!: 'where' | 'tag';

  @Text(200, { description: 'What should stand there.' })
  now!: string;

  @Text(1000, { description: 'Why.' })
  reason!: string;

  @Nested(() => SignBody, { description: 'The signature.' })
  sign!: SignBody;
}

export class SecondLookBody {
  @Id({ description: 'The correction that was asked for.' })
  asked!: string;

  @Nested(() => SignBody, { description: 'The signature.' })
  sign!: SignBody;
}

/** What the register says is right: a second person looked, or whoever asked takes it back. */
export class AsWrittenBody {
  @Id({ description: 'The correction that was asked for.' })
  asked!: string;

  @Text(1000, { description: 'Why it stays as it is written.' })
  reason!: string;

  @Nested(() => SignBody, { description: 'The signature.' })
  sign!: SignBody;
}

export class HandOverBody {
  @Text(120, { description: 'Who takes over: a shift, a person, a station.' })
  to!: string;

  @Text(2000, { description: 'What the next shift should know.', optional: true })
  note?: string;

  @Nested(() => SignBody, { description: 'The signature of who gives.' })
  sign!: SignBody;
}

export class TakeOverBody {
  @Id({ description: 'The hand-over that is taken.' })
  given!: string;

  @Text(2000, { description: 'Remarks of who takes.', optional: true })
  remarks?: string;

  @Nested(() => SignBody, { description: 'The signature of who takes.' })
  sign!: SignBody;
}
