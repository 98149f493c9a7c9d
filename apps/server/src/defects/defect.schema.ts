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

const signerKeys = {
  by: text('Name.'),
  role: text('Role in which it was signed.'),
  licence: text('Licence or certificate number.'),
  authorisation: text('Authorisation number.'),
  organisation: text('Organisation with its approval number.'),
  signedAt: instant('When it was signed'),
  method: oneOf(['password', 'passkey', 'single-sign-on', 'paper'], 'The form of the signature.'),
};

const placardLine = object({
  text: text('Its text.'),
  position: text('Where it belongs.'),
  fitted: yesNo('Fitted?'),
});

const defectLine = object(
  {
    id: text('id'),
    number: text('Number of the defect.'),
    aircraft: text('Id of the aircraft.'),
    registration: text('Mark of the aircraft.'),
    description: text('What was seen.'),
    origin: text('Who found it.'),
    sheet: orNull(text('Log sheet.')),
    system: orNull(text('System (ATA chapter).')),
    faultMessage: orNull(text('The message the aircraft showed.')),
    whenFound: orNull(oneOf(['before-moving', 'own-power', 'after-take-off'], 'When it was found, if anybody said.')),
    onItsFlight: orNull(ref('OnItsFlight')),
    entry: orNull(text('MEL entry.')),
    title: text('Title of the entry, or the first words of the description.'),
    units: list(text('unit')),
    oneOf: yesNo('True when it is one of the units and nobody knows which.'),
    basis: orNull(text('What the deferral stands on, in words.')),
    row: orNull(text('Row of the MEL entry.')),
    state: text('Where it stands, in words.'),
    recordedAt: text('When it was recorded in the log, with the offset as written.'),
    enteredAt: instant('When it was entered here'),
    deadline: orNull(ref('DeadlineLine')),
    work: list(ref('WorkLine')),
    placard: orNull(placardLine),
    brought: list(
      object({
        entry: text('MEL entry considered inoperative.'),
        title: text('Its title.'),
        row: text('A row of it.'),
        work: list(ref('WorkLine')),
        placard: orNull(placardLine),
      }),
      'Rows of items considered inoperative through this one: which of their work is owed, the answer says.',
    ),
    deferredBy: orNull(ref('SignedBy')),
    corrected: list(ref('CorrectionLine'), 'What was put right in it by corrections, in order.'),
    waits: list(text('What it is about.'), 'Corrections that wait for a second person to look.'),
    version: whole('Version; the ETag.'),
  },
  'A defect as it stands.',
);

const onItsFlight = object(
  {
    holds: oneOf(
      ['mel-applies', 'decide-before-take-off', 'commander-judges', 'no-relief', 'not-known'],
      'What holds for that flight.',
    ),
    words: text('The same in words.'),
    source: text('Where it comes from.'),
    mark: oneOf(['SEEN', 'SEEN-Q', 'SEEN-2', 'DERIVED', 'FROM MEMORY', 'COMMON PRACTICE'], 'How well it is known.'),
    caution: text('Who and what prevails.'),
  },
  'Whether the MEL decides about the flight on which it was found. A later flight waits for an answer in any case.',
);

const workLine = object({
  work: text('Which work.'),
  kind: text('M or O.'),
  text: text('What is to be done.'),
  reference: orNull(text('Manual reference. The manual prevails.')),
  minutes: orNull(whole('How long, in minutes.')),
  repeat: text('How often it is owed, in words.'),
  eachDeparture: yesNo('True when it is owed before each departure.'),
  by: text('Who does and signs it.'),
  cautions: list(text('A caution.')),
  card: orNull(text('The work card by which it is done; null: it is signed by itself.')),
  leaves: list(object({ kind: text('kind'), where: text('where'), undo: text('undo') })),
  signed: orNull(object({ ...signerKeys, doneAt: text('When it was done.') })),
});

const historyLine = object({
  seq: whole('Order in the history.'),
  act: text('What kind of act.'),
  words: text('What happened, in words.'),
  by: text('Name.'),
  licence: orNull(text('Licence or certificate number.')),
  authorisation: orNull(text('Authorisation number.')),
  organisation: text('Organisation with its approval number.'),
  role: text('Role.'),
  statement: orNull(text('What was certified.')),
  signedAt: orNull(instant('When it was signed')),
  method: orNull(text('The form of the signature.')),
  occurredAt: orNull(text('When it happened.')),
  recordedAt: text('When it was recorded in the log.'),
  enteredAt: instant('When it was entered here'),
  enteredAtBase: instant('The same as a clock at the base reads it, with its offset'),
  sealedAs: orNull(whole('Its number in the record, once sealed.')),
  id: text('Id of the act; a correction names it.'),
  corrections: list(ref('CorrectionLine'), 'What was put right in it afterwards, in order.'),
  correctable: list(ref('Correctable'), 'What of it can be corrected.'),
  otherwise: list(ref('PutRightOtherwise'), 'What of it no correction touches, and what to do instead.'),
  details: anything('The act as stored.'),
});

const openWork = object(
  {
    complete: yesNo('False while something of the work is still to be done.'),
    testAsked: yesNo('A test is asked for.'),
    tested: orNull(oneOf(['good', 'not-good'], 'The last test since the last piece of work.')),
    inspectionAsked: yesNo('An independent inspection is asked for.'),
    inspected: yesNo('Inspected since the last piece of work.'),
    restorationOwed: yesNo('Something was altered, so somebody signs that all is back to normal.'),
    restored: yesNo('Signed since the last piece of work.'),
    verified: yesNo('Somebody went over the aircraft since anything was touched.'),
    performers: list(text('name'), 'Who had a hand in the work.'),
    stopped: list(text('line'), 'Work cards that were stopped half-worked, and what of them is not done.'),
  },
  'Work begun and not yet released.',
);

const repeatFields = {
  work: text('Which work.'),
  text: text('What is to be done.'),
  state: oneOf(
    ['done', 'missed', 'not-known', 'due', 'coming'],
    'Done, left without, not known, owed, or not due yet.',
  ),
  words: text('The same in words.'),
  because: text('Why, with what was counted.'),
  flight: orNull(
    object(
      {
        id: orNull(text('Id of the planned flight.')),
        number: orNull(text('Its number.')),
        from: orNull(text('Station it leaves.')),
        offBlockAt: instant('Off blocks'),
      },
      'The departure before which it is owed, or that left without it, or the first that it was good for.',
    ),
  ),
  departures: whole('How many departures it was good for, or left without it.'),
  done: orNull(
    object({
      by: text('name'),
      doneAt: text('when'),
      enteredAt: instant('When it was entered here'),
      lateReason: orNull(text('Why it was entered after the aircraft left.')),
    }),
  ),
};

const repeatLine = object(repeatFields, 'One time that work was done, missed, or is owed.');
const fleetRepeat = object({
  ...repeatFields,
  defect: text('Id of the defect.'),
  number: text('Number of the defect.'),
  registration: text('Mark of the aircraft.'),
});

export const DEFECT_SHAPES: Record<string, Shape> = {
  DefectLine: defectLine,
  OnItsFlight: onItsFlight,
  WorkLine: workLine,
  HistoryLine: historyLine,
  OpenWork: openWork,
  RepeatLine: repeatLine,
  FleetRepeats: object({ at: instant('When this was read'), repeats: list(ref('FleetRepeat')) }),
  FleetRepeat: fleetRepeat,
  DefectView: object({
    at: instant('When this was read'),
    defect: ref('DefectLine'),
    arithmetic: orNull(text('The arithmetic of the deadline, step by step.')),
    openWork: orNull(ref('OpenWork')),
    documents: list(ref('DocumentLine'), 'What authorities allow beyond the deadline.'),
    repeats: list(ref('RepeatLine'), 'Work that is owed again and again, in order of time.'),
    concurrence: object(
      {
        needed: yesNo('The operator asks for a second person before a basis is signed.'),
        given: list(object({ basis: text('On which basis.'), ...signerKeys })),
      },
      'Who concurred since the item last changed.',
    ),
    causesGone: list(
      object({
        id: text('id'),
        number: text('Number of the defect.'),
        units: list(text('unit')),
        closedAt: instant('When it was closed'),
      }),
      'Closed defects of other units, for which a row of several units was signed: control may let its limit go.',
    ),
    left: list(ref('LeftLine')),
    waiting: list(ref('CorrectionWaiting'), 'Corrections that wait for a second person to look.'),
    history: list(ref('HistoryLine')),
  }),
  DefectList: object({ at: instant('When this was read'), defects: list(ref('DefectLine')) }),
  ActDone: object({
    defect: ref('DefectLine'),
    signed: orNull(object({ statement: text('What was certified.'), ...signerKeys })),
    explanation: orNull(text('The arithmetic of the deadline, step by step.')),
  }),
  SignedBy: object(signerKeys, 'Who signed, as shown to every reader.'),
  Statement: object({ act: text('Which act.'), statement: text('What will be certified.') }),
};
