import { ApiProperty } from '@nestjs/swagger';
import { IsBoolean, Validate, ValidatorConstraint, type ValidatorConstraintInterface } from 'class-validator';
import { Id, Ids, Instant, Nested, NestedList, SignBody, Text, Texts } from '../http/fields.js';

@ValidatorConstraint({ name: 'factValue' })
class FactValue implements ValidatorConstraintInterface {
  validate(value: unknown): boolean {
    if (typeof value === 'string') return value.length <= 200;
    return typeof value === 'boolean' || (typeof value === 'number' && Number.isFinite(value));
  }

  defaultMessage(): string {
    return '$property must be a text, a number, or true / false';
  }
}

/** The answer to one question. */
export class FactBody {
  @Text(160, { description: 'Key of the fact.', example: 'flight.icing' })
  key!: string;

  @ApiProperty({
    description: 'The answer, of the type of the fact.',
    oneOf: [{ type: 'string' }, { type: 'number' }, { type: 'boolean' }],
  })
  @Validate(FactValue)
  value!: string | number | boolean;

  @Id({ description: 'The flight it is about; absent for a fact of the aircraft.', optional: true })
  flight?: string;

  @Text(200, { description: 'Where the answer comes from, such as a forecast with its number.' })
  source!: string;

  @Instant({ description: 'When it was observed.' })
  observedAt!: string;

  @Instant({ description: 'Until when it is good; absent means as long as such facts are.', optional: true })
  validUntil?: string;
}

/** A row that might be used: nothing is stored. */
export class ProposalBody {
  @Id({ description: 'The open defect; absent for a defect that is not written up yet.', optional: true })
  defect?: string;

  @Text(40, { description: 'MEL entry.' })
  entry!: string;

  @Texts(40, 40, { description: 'The failed unit, or those of which one failed.' })
  units!: string[];

  @Text(20, { description: 'The row to be tried.' })
  row!: string;
}

/** An item taken as failed. */
export class BrokenBody {
  @Text(40, { description: 'MEL entry.' })
  entry!: string;

  @Texts(40, 40, { description: 'The failed unit, or those of which one failed.' })
  units!: string[];

  @Text(20, { description: 'The row to be tried; absent looks for the best one.', optional: true })
  row?: string;
}

/** A fact of the flight taken as known. */
export class SupposedFactBody {
  @Text(160, { description: 'Key of the fact.', example: 'flight.icing' })
  key!: string;

  @ApiProperty({
    description: 'The value, of the type of the fact.',
    oneOf: [{ type: 'string' }, { type: 'number' }, { type: 'boolean' }],
  })
  @Validate(FactValue)
  value!: string | number | boolean;
}

/** What is tried; nothing of it is stored. */
export class ChangesBody {
  @Ids(40, { description: 'Open defects taken as fixed.', optional: true })
  fix?: string[];

  @NestedList(() => BrokenBody, 20, { description: 'Items taken as failed.', optional: true })
  broken?: BrokenBody[];

  @NestedList(() => SupposedFactBody, 100, { description: 'Facts of the flight taken as known.', optional: true })
  facts?: SupposedFactBody[];
}

export class QuestionBody {
  @Id({ description: 'The aircraft.' })
  aircraft!: string;

  @Id({
    description:
      'The flight, perhaps one planned for another aircraft; absent asks without a flight, so that all flight facts are unknown.',
    optional: true,
  })
  flight?: string;

  @Instant({ description: 'Another instant than now.', optional: true })
  at?: string;

  @NestedList(() => ProposalBody, 20, { description: 'Rows to be tried.' })
  propose!: ProposalBody[];

  @Nested(() => ChangesBody, { description: 'Changes to be tried.', optional: true })
  changes?: ChangesBody;
}

/** A named person's answer to a question that only a person can settle. */
export class JudgementBody {
  @Text(160, { description: '`<entry>/<row>/<judgement>`, or `combination`.' })
  judgement!: string;

  @ApiProperty({ description: 'Accepted or not.' })
  @IsBoolean()
  accepted!: boolean;

  @Id({ description: 'The flight it is given for; absent for all flights until something changes.', optional: true })
  flight?: string;

  @Instant({ description: 'Until when it is good.', optional: true })
  validUntil?: string;

  @Text(1000, { description: 'Why.', optional: true })
  reason?: string;

  @Nested(() => SignBody, { description: 'The signature.' })
  sign!: SignBody;
}
