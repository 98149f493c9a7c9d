/** How settings are changed by HTTP. Whether a value fits its setting is said by the list of settings. */
import { ApiProperty, ApiPropertyOptional } from '@nestjs/swagger';
import {
  ArrayMinSize,
  IsOptional,
  Validate,
  ValidatorConstraint,
  type ValidatorConstraintInterface,
} from 'class-validator';
import { Nested, NestedList, SignBody, Text } from '../http/fields.js';

const MOST_CHARACTERS = 1200;
const MOST_PARTS = 20;

@ValidatorConstraint({ name: 'settingValue' })
class PlainValue implements ValidatorConstraintInterface {
  validate(value: unknown): boolean {
    if (Array.isArray(value)) return value.length <= MOST_PARTS && value.every(isShort);
    return isShort(value) || typeof value === 'boolean' || (typeof value === 'number' && Number.isFinite(value));
  }

  defaultMessage(): string {
    return '$property must be a text, a number, true / false, or a list of texts';
  }
}

function isShort(value: unknown): boolean {
  return typeof value === 'string' && value.length <= MOST_CHARACTERS;
}

export class SettingChangeBody {
  @Text(60, { description: 'Which setting; `preset` chooses the preset.', example: 'expiryInFlight' })
  key!: string;

  @ApiPropertyOptional({
    description: "The operator's own value; absent or null goes back to the value of the preset.",
    oneOf: [
      { type: 'string' },
      { type: 'number' },
      { type: 'boolean' },
      { type: 'array', items: { type: 'string' } },
    ],
  })
  @IsOptional()
  @Validate(PlainValue)
  value?: string | number | boolean | string[] | null;

  @Text(1000, { description: 'Why.' })
  reason!: string;
}

export class PreviewSettingsBody {
  @ApiProperty({ type: () => [SettingChangeBody] })
  @ArrayMinSize(1)
  @NestedList(() => SettingChangeBody, 40, { description: 'What is to be changed.' })
  changes!: SettingChangeBody[];
}

export class ChangeSettingsBody extends PreviewSettingsBody {
  @Nested(() => SignBody, { description: 'The signature, where something open would change.', optional: true })
  sign?: SignBody;
}
