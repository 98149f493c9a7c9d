import {
  anything,
  instant,
  list,
  object,
  oneOf,
  orNull,
  ref,
  type Shape,
  text,
  whole,
  yesNo,
} from '../openapi/shape.js';

const TRUTH = ['F', 'U', 'T'];
const CODES = ['nothing-open', 'may-fly', 'after-work', 'not-settled', 'may-not-fly'];
const BOUNDS = ['may-fly', 'after-work', 'may-not-fly'];
const truths = {
  now: oneOf(TRUTH, 'As things are: false, unknown, true.'),
  after: oneOf(TRUTH, 'After the work that can be done before the flight.'),
};

const explainedNode = object(
  {
    ...truths,
    node: oneOf(['all', 'any', 'not', 'leaf'], 'What joins the parts.'),
    text: text('The sentence it stands for.'),
    'children?': list(ref('ExplainedNode')),
    'fact?': text('Key of the fact.'),
    'operator?': text('How it is compared.'),
    'expected?': anything('With what.'),
    'actual?': anything('The value used.'),
    'known?': yesNo('False when nobody has answered.'),
    'because?': text('Why its value is not known, or was not used.'),
    'source?': text('Where the value comes from.'),
    'observedAt?': text('When it was observed.'),
    'validUntil?': text('Until when it is good.'),
    'ageMinutes?': whole('Minutes since it was observed, when the answer was given.'),
    'validFor?': text('How long it holds, where it names no end.'),
    'mayAnswer?': list(text('role')),
    'question?': text('The question to ask.'),
  },
  'A condition with its answer.',
);

const conditionAnswer = object({
  ...truths,
  kind: text('What kind of condition.'),
  id: text('Entry, row and proviso.'),
  text: text('The condition in words.'),
  because: text('Why it holds, fails or is not known.'),
  'tree?': ref('ExplainedNode'),
  'onlyUnder?': text('The document of an authority without which it would not hold.'),
});

const cause: Shape = {
  anyOf: [
    object({ kind: { const: 'failed' }, defect: text('Id of the defect.') }),
    object({
      kind: { const: 'considered-inoperative' },
      by: object({ entry: text('entry'), unit: text('unit'), row: text('row') }),
    }),
  ],
};

const itemAnswer = object({
  ...truths,
  entry: text('MEL entry.'),
  title: text('Its title.'),
  unit: text('The unit that is down.'),
  perhaps: yesNo('True when it is only one of several that may be the failed one.'),
  cause,
  row: orNull(text('The row it is judged under.')),
  conditions: list(ref('ConditionAnswer')),
});

const workStep = object({
  work: text('Which work.'),
  text: text('What is to be done.'),
  minutes: orNull(whole('How long, in minutes.')),
  by: text('Who does and signs it.'),
  needsPersonAtStation: yesNo('True when somebody authorised must stand at the station.'),
  'defect?': text('Id of the defect.'),
  step: whole('1, 2, 3 ... in the order in which it can be done.'),
  needs: list(whole('step'), 'Steps that must be done before it.'),
  startsAfter: orNull(whole('Minutes from now; null where something before it has no figure.')),
  endsAfter: orNull(whole('Minutes from now.')),
});

const verdict = object(
  {
    verdict: oneOf(CODES, 'The answer.'),
    words: text('The answer in words.'),
    'onlyUnder?': list(text('document'), 'Documents of authorities without which it may not fly this flight.'),
    lo: oneOf(BOUNDS, 'What is certain whatever the unknowns turn out to be.'),
    hi: oneOf(BOUNDS, 'What is possible if they turn out well.'),
    reason: orNull(oneOf(['budget', 'readings'], 'Why the search ended early; null when it did not.')),
    at: instant('The instant it was asked for'),
    aircraft: text('Registration.'),
    flight: orNull(text('Id of the flight.')),
    mel: orNull(object({ document: text('document'), revision: text('revision') })),
    items: list(ref('ItemAnswer')),
    gates: list(
      object({
        ...truths,
        gate: text('Which gate.'),
        text: text('In words.'),
        because: text('Why.'),
        'found?': list(text('A sentence.'), 'Of the combination: what was found about the items together.'),
      }),
      'Conditions of the whole aircraft.',
    ),
    reasons: list(text('A sentence.'), 'The deciding ones first.'),
    refusedRows: list(
      object({ entry: text('entry'), unit: text('unit'), row: text('row'), because: list(text('A sentence.')) }),
    ),
    work: list(ref('WorkStep'), 'What is still to be done, each step after those that it waits for.'),
    workMinutes: orNull(whole('All of it, one thing after another, in minutes.')),
    earliestOffBlockAt: orNull(
      instant('Earliest off-block when the work is begun now and different roles work side by side'),
    ),
    lateMinutes: orNull(whole('How long after the planned off-block that is, in minutes.')),
    questions: list(
      object({
        fact: text('Key of the fact.'),
        question: text('The question.'),
        mayAnswer: list(text('role')),
        neededBy: list(text('Which conditions wait for it.')),
      }),
    ),
    validUntil: orNull(object({ at: instant('Until when the answer is good'), because: text('Why.') })),
    notLookedAt: list(text('What was not looked at.')),
    evaluator: { const: 'json-rules-engine' },
    'helps?': ref('WhatHelps'),
  },
  'May this aircraft fly this flight, and why.',
);

export const VERDICT_SHAPES: Record<string, Shape> = {
  ExplainedNode: explainedNode,
  ConditionAnswer: conditionAnswer,
  ItemAnswer: itemAnswer,
  WorkStep: workStep,
  Verdict: verdict,
  FactList: object({
    facts: list(
      object({
        id: text('Id; a key is the id, or the id with a subject in brackets.'),
        subject: oneOf(['none', 'entry', 'work', 'judgement'], 'What stands in the brackets of its key.'),
        label: text('What it is called.'),
        type: oneOf(['boolean', 'number', 'choice'], 'Type of its value.'),
        unit: orNull(text('Unit of a number.')),
        choices: orNull(list(text('choice'), 'Values of a choice; null when any text is taken.')),
        mayAnswer: list(text('role')),
        goodForMinutes: orNull(whole('How long an answer is good when nothing else is said; null: for its flight.')),
      }),
    ),
  }),
  FactAnswered: object({ id: text('id'), key: text('Key of the fact.'), value: anything('The answer.') }),
  JudgementGiven: object({ id: text('id'), judgement: text('Which.'), accepted: yesNo('Accepted?') }),
};
