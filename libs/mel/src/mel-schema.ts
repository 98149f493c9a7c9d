/**
 * The published JSON Schema (draft 2020-12) of a MEL file. It holds the shape; what a schema cannot say (references that
 * exist, numbers that agree, polarity) is held by the checks beside the loader.
 */
import { CARD_PARTS } from './cards/card-parts.js';
import { deepFreeze } from './deep-freeze.js';
import { closed, LEFT_KINDS, listOf, PARTS, ref } from './schema-parts.js';

const ROLES = [
  'technician',
  'maintenance-control',
  'engineer',
  'commander',
  'dispatcher',
  'quality',
  'mel-engineer',
  'administrator',
];
const MARKS = ['SEEN', 'SEEN-Q', 'SEEN-2', 'SEEN-P', 'DERIVED', 'FROM MEMORY', 'INVENTED'];

const count = { type: 'integer', minimum: 0, maximum: 50 };
const serial = { type: 'integer', minimum: 0, maximum: 9_999_999 };
const interval = { type: 'string', minLength: 3, maxLength: 200 };

const source = closed(['document'], {
  document: ref('line'),
  revision: ref('line'),
  page: ref('line'),
  mark: { enum: MARKS },
});

const appliesTo = closed([], {
  types: ref('names'),
  configurations: ref('names'),
  serials: {
    type: 'array',
    minItems: 1,
    maxItems: 100,
    items: closed(['from', 'to'], { from: serial, to: serial }),
  },
});

const repeat = {
  anyOf: [
    { enum: ['once', 'each-departure', 'each-flight-day'] },
    closed(['every'], { every: interval }),
    closed(['afterFirstFlightThenEvery'], { afterFirstFlightThenEvery: interval }),
  ],
};

const procedure = closed(['id', 'kind', 'text'], {
  id: ref('name'),
  kind: { enum: ['M', 'O'] },
  text: ref('text'),
  reference: ref('line'),
  minutes: { type: 'integer', minimum: 0, maximum: 10_080 },
  repeat,
  needsPersonAtStation: { type: 'boolean' },
  by: { enum: ROLES },
  leaves: listOf('leaves', 20),
  cautions: listOf('text', 20),
  card: ref('name'),
});

const row = closed(['id', 'category', 'numberRequired', 'remarks'], {
  id: ref('name'),
  category: { enum: ['A', 'B', 'C', 'D'] },
  interval,
  lastOf: closed(['says', 'source'], { says: ref('text'), source: ref('source') }),
  intervalByUnit: {
    type: 'object',
    minProperties: 1,
    maxProperties: 50,
    propertyNames: ref('name'),
    additionalProperties: interval,
  },
  numberInstalled: count,
  numberRequired: count,
  covers: ref('names'),
  remarks: ref('text'),
  provisos: listOf('proviso', 40),
  procedures: listOf('procedure', 20),
  placard: closed(['text', 'position'], { text: ref('text'), position: ref('line') }),
  judgements: listOf('judgement', 10),
  consideredInoperative: listOf('entryRef', 40),
  needsDown: listOf('entryRef', 40),
  notes: listOf('note', 20),
  incomplete: ref('text'),
  source: ref('source'),
});

const subEntry = closed(['id', 'units', 'rows'], {
  id: ref('name'),
  appliesTo: ref('appliesTo'),
  units: ref('names'),
  // An item without a row offers no relief: it exists so that other rows may refer to it.
  rows: listOf('row', 40, 0),
});

const entry = closed(['number', 'title', 'chapter', 'subEntries'], {
  number: ref('name'),
  title: ref('line'),
  chapter: { type: 'string', pattern: '^\\d{2}$' },
  jasc: { type: 'string', pattern: '^\\d{4}$' },
  words: listOf('line', 50),
  faultMessages: listOf('line', 100),
  interaction: { enum: ['none'] },
  subEntries: listOf('subEntry', 20),
  source: ref('source'),
});

const SCHEMA = {
  $schema: 'https://json-schema.org/draft/2020-12/schema',
  $id: 'urn:proviso:mel:1',
  title: 'Proviso MEL, format 1',
  description: 'One revision of an operator’s minimum equipment list for one aircraft type.',
  ...closed(['format', 'document', 'operator', 'aircraftType', 'revision', 'effectiveOn', 'entries'], {
    format: { const: 'proviso-mel/1' },
    document: ref('line'),
    operator: ref('line'),
    aircraftType: ref('line'),
    revision: ref('line'),
    effectiveOn: { type: 'string', pattern: '^\\d{4}-\\d{2}-\\d{2}$' },
    notice: ref('text'),
    entries: listOf('entry', 2000),
    cards: listOf('card', 500),
  }),
  $defs: {
    ...PARTS,
    ...CARD_PARTS,
    source,
    appliesTo,
    entryRef: closed(['entry'], { entry: ref('name'), units: ref('names') }),
    proviso: closed(['id', 'text', 'when'], { id: ref('name'), text: ref('text'), when: ref('condition') }),
    judgement: closed(['id', 'question', 'by'], {
      id: ref('name'),
      question: ref('text'),
      by: { enum: ROLES },
    }),
    leaves: closed(['kind', 'where', 'undo'], {
      kind: { enum: LEFT_KINDS },
      where: ref('line'),
      undo: ref('text'),
    }),
    note: closed(['text'], { text: ref('text'), lost: listOf('entryRef', 40) }),
    procedure,
    row,
    subEntry,
    entry,
  },
};

export const MEL_SCHEMA: Readonly<Record<string, unknown>> = deepFreeze(SCHEMA);
