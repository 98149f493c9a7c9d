/** What a published schema has against a value, in words. */
import { Ajv2020, type ErrorObject } from 'ajv/dist/2020.js';
import { MEL_SCHEMA } from './mel-schema.js';
import { MOST_ERRORS, type Finding } from './mel-error.js';

const SAID_BY_ANOTHER = new Set(['if', 'anyOf']);

const reasonOf = (error: ErrorObject): string => {
  const params = error.params as Record<string, unknown>;
  switch (error.keyword) {
    case 'additionalProperties':
      return `the key "${String(params['additionalProperty'])}" is not known here`;
    case 'required':
      return `the key "${String(params['missingProperty'])}" is missing`;
    case 'enum':
      return `must be one of ${(params['allowedValues'] as unknown[]).join(', ')}`;
    case 'const':
      return `must be "${String(params['allowedValue'])}"`;
    case 'not':
      return 'is a name that may not be used';
    case 'pattern':
      return `does not have the form ${String(params['pattern'])}`;
    default:
      return error.message ?? 'does not fit the schema';
  }
};

const pathOf = (pointer: string): string[] =>
  pointer
    .split('/')
    .slice(1)
    .map((step) => step.replaceAll('~1', '/').replaceAll('~0', '~'));

/** Reads values against one schema: every deviation, in document order of discovery; empty when the value fits. */
export const findingsAgainst = (schema: object): ((value: unknown) => Finding[]) => {
  const validate = new Ajv2020({ allErrors: true, strict: true, strictRequired: false }).compile(schema);
  return (value) => {
    if (validate(value)) return [];
    const errors = (validate.errors ?? []).slice(0, MOST_ERRORS * 10);
    // `if` and `anyOf` only repeat what their branches say, unless they say it alone.
    const telling = errors.filter((error) => !SAID_BY_ANOTHER.has(error.keyword));
    return (telling.length > 0 ? telling : errors).map((error) => ({
      path: pathOf(error.instancePath),
      reason: reasonOf(error),
    }));
  };
};

export const schemaFindings = findingsAgainst(MEL_SCHEMA);
