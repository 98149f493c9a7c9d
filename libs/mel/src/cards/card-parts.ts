/** The part of the published schemas that says how a work card looks. Steps are told apart by their kind. */
import { closed, LEFT_KINDS, listOf, ref } from '../schema-parts.js';
import { PAIRS } from './card.js';

const DAY = { type: 'string', pattern: '^\\d{4}-\\d{2}-\\d{2}$' };
const minutes = { type: 'integer', minimum: 1, maximum: 1440 };
const count = { type: 'integer', minimum: 1, maximum: 200 };
const yesNo = { type: 'boolean' };
const licence = {
  type: 'array',
  minItems: 1,
  maxItems: 4,
  uniqueItems: true,
  items: { enum: ['A', 'B1', 'B2', 'C'] },
};

const common = {
  id: ref('name'),
  text: ref('text'),
  after: { type: 'array', maxItems: 60, uniqueItems: true, items: ref('name') },
  licence,
  takes: { type: 'integer', minimum: 0, maximum: 1440 },
  needs: listOf('need', 20),
  cautions: listOf('text', 20),
};

/** What each kind of step carries besides. */
const KINDS: Record<string, [required: string[], properties: Record<string, object>]> = {
  do: [[], {}],
  verify: [[], {}],
  measure: [['measure'], { measure: ref('measure') }],
  renew: [['part'], { part: ref('line'), count, certified: yesNo }],
  wait: [['lasts'], { lasts: ref('lasts') }],
  out: [['account'], { account: ref('name') }],
  in: [['account'], { account: ref('name') }],
  inspect: [['of'], { of: ref('names') }],
  run: [['lasts', 'readings', 'look'], { lasts: ref('lasts'), readings: listOf('measure', 20), look: ref('text') }],
};

const stepOf = ([kind, [required, properties]]: [string, [string[], Record<string, object>]]): object =>
  closed(['id', 'kind', 'text', ...required], { ...common, kind: { const: kind }, ...properties });

/** The branch of the kind that is named, so that an error is reported once and about that kind. */
const step = Object.entries(KINDS).reduceRight<object>(
  (otherwise, [kind, parts]) => ({
    type: 'object',
    if: { type: 'object', required: ['kind'], properties: { kind: { const: kind } } },
    then: stepOf([kind, parts]),
    else: otherwise,
  }),
  { type: 'object', required: ['kind'], properties: { kind: { enum: Object.keys(KINDS) } } },
);

export const CARD_PARTS = {
  need: closed(['kind', 'what'], {
    kind: { enum: ['tool', 'part', 'equipment', 'supplies', 'second-person'] },
    what: ref('line'),
    account: ref('name'),
    calibrated: yesNo,
    licence,
    privilege: { enum: ['sign-procedure', 'inspect', 'release'] },
  }),
  account: closed(['id', 'pair', 'what', 'where'], {
    id: ref('name'),
    pair: { enum: Object.keys(PAIRS) },
    what: ref('line'),
    where: ref('line'),
    count,
    kind: { enum: LEFT_KINDS },
    numbered: yesNo,
    undo: ref('text'),
    over: { enum: ['stays', 'found'] },
  }),
  measure: closed(['id', 'what', 'unit'], {
    id: ref('name'),
    what: ref('line'),
    unit: { type: 'string', minLength: 1, maxLength: 20, pattern: '\\S' },
    from: { type: 'number' },
    to: { type: 'number' },
  }),
  lasts: {
    type: 'object',
    if: { required: ['minutes'] },
    then: closed(['minutes'], { minutes }),
    else: closed(['shownBy'], { shownBy: ref('line'), atLeast: minutes }),
  },
  step,
  card: closed(['id', 'title', 'purpose', 'reference', 'steps'], {
    id: ref('name'),
    title: ref('line'),
    purpose: { enum: ['procedure', 'rectification', 'restoration', 'check'] },
    reference: closed(['manual', 'task', 'revision', 'issuedOn'], {
      manual: ref('line'),
      task: ref('line'),
      revision: ref('line'),
      issuedOn: DAY,
    }),
    entries: ref('names'),
    cautions: listOf('text', 20),
    accounts: listOf('account', 60),
    steps: listOf('step', 60),
  }),
};
