/** Building blocks of the published schema: names, texts, and the condition tree. */

/** Names become parts of keys such as `<entry>/<row>/<id>`, so they hold no slash, bracket, plus or blank at the ends. */
const name = {
  type: 'string',
  minLength: 1,
  maxLength: 40,
  pattern: '^[0-9A-Za-z](?:[0-9A-Za-z. _-]*[0-9A-Za-z])?$',
  // Names that every JavaScript object already answers to.
  not: { enum: ['constructor', 'prototype', 'toString', 'valueOf', 'hasOwnProperty', 'toLocaleString'] },
};

const text = { type: 'string', minLength: 1, maxLength: 4000, pattern: '\\S' };

const line = { type: 'string', minLength: 1, maxLength: 200, pattern: '\\S' };

const names = (maxItems: number) => ({
  type: 'array',
  minItems: 1,
  maxItems,
  uniqueItems: true,
  items: { $ref: '#/$defs/name' },
});

/** An object with these properties and no others. */
export const closed = (required: string[], properties: Record<string, object>): object => ({
  type: 'object',
  additionalProperties: false,
  required,
  properties,
});

export const ref = (part: string): object => ({ $ref: `#/$defs/${part}` });

export const listOf = (part: string, maxItems: number, minItems = 1): object => ({
  type: 'array',
  minItems,
  maxItems,
  items: ref(part),
});

/** Branches are told apart by the key they hold, so that an error is reported once, about the branch that was meant. */
const condition = {
  type: 'object',
  if: { required: ['all'] },
  then: closed(['all'], { all: listOf('condition', 100), text: ref('text') }),
  else: {
    if: { required: ['any'] },
    then: closed(['any'], { any: listOf('condition', 100), text: ref('text') }),
    else: {
      if: { required: ['not'] },
      then: closed(['not'], { not: ref('condition'), text: ref('text') }),
      else: ref('leaf'),
    },
  },
};

const scalar = { anyOf: [{ type: 'string', minLength: 1, maxLength: 200 }, { type: 'number' }] };

const leaf = closed(['fact', 'operator', 'value'], {
  fact: { type: 'string', maxLength: 80, pattern: '^[a-z]+\\.[A-Za-z]+$' },
  operator: {
    enum: [
      'equal',
      'notEqual',
      'lessThan',
      'lessThanInclusive',
      'greaterThan',
      'greaterThanInclusive',
      'in',
      'notIn',
    ],
  },
  value: {
    anyOf: [
      ...scalar.anyOf,
      { type: 'boolean' },
      { type: 'array', minItems: 1, maxItems: 50, uniqueItems: true, items: scalar },
    ],
  },
  params: closed([], {
    entry: ref('name'),
    units: names(50),
    work: ref('key'),
    judgement: ref('key'),
  }),
  text: ref('text'),
});

/** What may be left altered on an aircraft. */
export const LEFT_KINDS = [
  'breaker',
  'lock-pin',
  'valve-position',
  'connector-capped',
  'panel-open',
  'equipment-removed',
  'placard',
  'tool',
];

export const PARTS = {
  name,
  names: names(50),
  text,
  line,
  key: { type: 'string', minLength: 1, maxLength: 130, pattern: '^[^\\[\\]+]+$' },
  condition,
  leaf,
};
