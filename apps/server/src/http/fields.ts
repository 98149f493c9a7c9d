/** Fields that several bodies share, each with its check and its words for the OpenAPI document. */
import { applyDecorators } from '@nestjs/common';
import { ApiProperty, ApiPropertyOptional } from '@nestjs/swagger';
import { Transform, Type } from 'class-transformer';
import {
  ArrayMaxSize,
  ArrayMinSize,
  ArrayUnique,
  IsArray,
  IsBoolean,
  IsIn,
  IsObject,
  IsString,
  IsUUID,
  Length,
  Matches,
  Validate,
  ValidateIf,
  ValidateNested,
  type ValidationArguments,
  ValidatorConstraint,
  type ValidatorConstraintInterface,
} from 'class-validator';
import { IntervalInputError, readInstant } from '#intervals';

@ValidatorConstraint({ name: 'instant' })
class RealInstant implements ValidatorConstraintInterface {
  validate(value: unknown): boolean {
    return instantFault(value) === null;
  }

  defaultMessage({ value }: ValidationArguments): string {
    return `$property ${instantFault(value) ?? ''}`;
  }
}

/** Why this is no instant that can be kept, to stand behind its name; null when it is one. */
export function instantFault(value: unknown): string | null {
  try {
    readInstant('', value as string);
    return null;
  } catch (error) {
    if (!(error instanceof IntervalInputError)) throw error;
    return OUTSIDE_THE_YEARS.test(error.because)
      ? `${error.because.replace(/\.$/, '')}: too long ago, or too far ahead, to be of an aircraft here`
      : 'must be a real date and time with offset, such as 2026-01-26T10:00:00Z';
  }
}

const OUTSIDE_THE_YEARS = /^has a year outside/;

interface Words {
  description: string;
  example?: unknown;
  optional?: boolean;
}

function asWritten(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(asWritten);
  return typeof value === 'string' ? value.toLowerCase() : value;
}

/** What is optional may be absent; null is no way to say so, because the document does not offer it. */
const IfGiven = () => ValidateIf((_, value: unknown) => value !== undefined);

const property = ({ optional, ...words }: Words) =>
  optional ? applyDecorators(IfGiven(), ApiPropertyOptional(words as object)) : ApiProperty(words as object);

/** The documentation knows a class that is named later by a function called `type`, and by no other name. */
const lazily = (of: () => new () => object): object => ({ type: () => of() });

/** One line or more of plain text, from 1 to `most` characters. HTML in it is text like any other. */
export const Text = (most: number, words: Words) =>
  applyDecorators(property(words), IsString(), Length(1, most), Matches(/\S/, { message: '$property is blank' }));

/**
 * Text of one line in which every sign is seen: a name that is read as another one, turned round or with something
 * unseen in it, is not the name of that person. What joins letters in some scripts is taken.
 */
export const Line = (most: number, words: Words) =>
  applyDecorators(
    Text(most, words),
    Matches(/^[^\p{Cc}\u200b\u200e\u200f\u2028-\u202e\u2060-\u206f\ufeff]*$/u, {
      message: '$property holds a sign that is not seen, or that turns the text round',
    }),
  );

export const Instant = (words: Words) => applyDecorators(property(words), IsString(), Validate(RealInstant));

export const Digits = (many: number, words: Words) =>
  applyDecorators(
    property(words),
    Matches(new RegExp(`^\\d{${many}}$`), { message: `$property must be ${many} digits` }),
  );

/** A whole number from 1, as it stands in an address. */
export const Count = (words: Words) =>
  applyDecorators(
    property(words),
    Matches(/^[1-9]\d{0,14}$/, { message: '$property must be a whole number from 1' }),
  );

/** One way to write an id, so that two of the same are equal wherever they are compared. */
const Written = () => Transform(({ value }: { value: unknown }) => asWritten(value));

export const Id = (words: Words) => applyDecorators(property(words), Written(), IsUUID());

/** Ids, each once; the list may be empty. */
export const Ids = (most: number, words: Words) =>
  applyDecorators(
    property({ ...words, ...({ type: [String] } as object) }),
    Written(),
    IsArray(),
    ArrayMaxSize(most),
    ArrayUnique(),
    IsUUID(undefined, { each: true }),
  );

export const YesNo = (words: Words) => applyDecorators(property(words), IsBoolean());

export const OneOf = (values: readonly string[], words: Words) =>
  applyDecorators(property({ ...words, ...({ enum: values } as object) }), IsIn([...values]));

/** Some of these values, each once, one at least. */
export const Several = (values: readonly string[], words: Words) =>
  applyDecorators(
    property({ ...words, ...({ isArray: true, enum: values } as object) }),
    IsArray(),
    ArrayMinSize(1),
    ArrayUnique(),
    IsIn([...values], { each: true }),
  );

/** Texts, each once: a unit named twice would be counted twice. */
export const Texts = (most: number, length: number, words: Words) =>
  applyDecorators(
    property({ ...words, ...({ type: [String] } as object) }),
    IsArray(),
    ArrayMinSize(1),
    ArrayMaxSize(most),
    ArrayUnique(),
    IsString({ each: true }),
    Length(1, length, { each: true }),
  );

export const Nested = (type: () => new () => object, words: Words) =>
  applyDecorators(property({ ...words, ...lazily(type) }), IsObject(), ValidateNested(), Type(type));

export const NestedList = (type: () => new () => object, most: number, words: Words) =>
  applyDecorators(
    property({ ...words, ...lazily(type), ...({ isArray: true } as object) }),
    IsArray(),
    ArrayMaxSize(most),
    ValidateNested({ each: true }),
    Type(type),
  );

/** Any JSON object, as it is: only what reads it knows its shape. */
export const JsonObject = (words: Words) =>
  applyDecorators(property({ ...words, ...({ type: 'object', additionalProperties: true } as object) }), IsObject());

export class PasskeyBody {
  @Id({ description: 'Id of the challenge that was answered.' })
  challenge!: string;

  @JsonObject({ description: 'What the browser answered, as JSON (WebAuthn).' })
  response!: Record<string, unknown>;
}

/** What every signed act carries: the statement that was shown, and one proof that it is the signer who signs it. */
export class SignBody {
  @Text(200, { description: "The signer's own secret, entered again for this signature.", optional: true })
  secret?: string;

  @Nested(() => PasskeyBody, { description: 'A passkey that signed this statement.', optional: true })
  passkey?: PasskeyBody;

  @Id({ description: 'A fresh sign-on for this statement.', optional: true })
  signedOn?: string;

  @Text(2000, { description: 'The statement that was shown to the signer, word for word.' })
  statement!: string;
}
