import { day, instant, list, object, oneOf, orNull, ref, type Shape, text, whole, yesNo } from '../openapi/shape.js';

const measure = object({
  id: text('Which reading.'),
  what: text('What is read.'),
  unit: text('Its unit.'),
  limits: text('What the card allows, in words.'),
});

const account = object(
  {
    id: text('Which account.'),
    what: text('What it is.'),
    where: text('Where it is.'),
    count: whole('How many.'),
    numbered: yesNo('It has a number of its own, entered when it goes out and when it comes in.'),
    state: oneOf(['not-yet', 'out', 'in', 'stays'], 'How it stands.'),
    outWord: text('What it is called while it is out: open, pulled, fitted.'),
    inWord: text('What it is called once it is in: closed, reset, removed.'),
    number: orNull(text('Its number, while it stands in the register.')),
  },
  'Something that the card alters: counted out and in.',
);

const need = object({
  kind: oneOf(['tool', 'part', 'equipment', 'supplies', 'second-person'], 'What kind of thing.'),
  what: text('Which.'),
  stated: yesNo('Which one it is, is stated with the step.'),
  calibrated: yesNo('Until when it is calibrated, too.'),
  issued: orNull(text('Of a tool: the number of the one that the card issued.')),
  last: orNull(
    object(
      { number: text('Its number.'), calibratedUntil: orNull(day('Its last day of calibration.')) },
      'The one that the operator used last, while it is in calibration.',
    ),
  ),
  licence: list(text('Of a second person: one of these licence categories.')),
});

const step = object({
  id: text('Which step.'),
  kind: oneOf(['do', 'verify', 'measure', 'renew', 'wait', 'out', 'in', 'inspect', 'run'], 'What is asked.'),
  text: text('What is to be done.'),
  cautions: list(text('A caution.')),
  needs: list(need),
  licence: list(text('One of these licence categories is needed; none named: whoever may sign procedures.')),
  takes: orNull(whole('How long it takes, in minutes.')),
  state: oneOf(['waits', 'next', 'begun', 'ran', 'done'], 'Where it stands; waits: for other steps.'),
  waitsFor: list(text('A step that must be done before.')),
  done: orNull(
    object({
      by: text('Who.'),
      second: orNull(text('Who was there as the second person: "Wick Straddock, who signed".')),
      used: list(text('Which equipment was used, by its number and calibration.')),
      at: instant('When'),
      words: text('What was read, counted or found.'),
    }),
  ),
  begun: orNull(
    object({
      begunAt: instant('The recorded start'),
      minutes: whole('How long it lasts.'),
      until: instant('Not over before then'),
    }),
  ),
  measure: orNull(measure),
  renew: orNull(
    object({
      part: text('Which part.'),
      count: whole('How many.'),
      certified: yesNo('The reference of its release certificate is asked for.'),
    }),
  ),
  minutes: orNull(whole('How long it lasts, from the card.')),
  shownBy: orNull(text('What on the aircraft shows how long it lasts: somebody reads it there.')),
  readings: list(measure),
  look: orNull(text('What is looked at afterwards.')),
  account: orNull(ref('CardAccount')),
  inspects: list(text('A step that is inspected.')),
});

const manualRevision = object({
  manual: text('The manual.'),
  task: orNull(text('The task; null: the whole manual.')),
  revision: text('The revision.'),
  issuedOn: text('The day it was issued.'),
});

const confirmed = orNull(object({ by: text('Who.'), at: instant('When') }));

export const CARD_SHAPES: Record<string, Shape> = {
  CardAccount: account,
  CardStep: step,
  ManualRevision: manualRevision,
  CardWork: object(
    {
      id: text('The work, by the id it was started under.'),
      card: text('Which card.'),
      title: text('Its title.'),
      purpose: text('What it is for.'),
      reference: text('Manual reference with its revision. The manual prevails.'),
      procedure: orNull(text('The procedure it does.')),
      forFlight: orNull(text('The flight it is done for.')),
      startedBy: text('Who started it.'),
      startedAt: instant('When'),
      ended: orNull(object({ how: oneOf(['signed', 'stopped'], 'How.'), by: text('Who.'), at: instant('When') })),
      cautions: list(text('A caution for the whole work.')),
      steps: list(ref('CardStep')),
      accounts: list(ref('CardAccount')),
      missing: list(text('What keeps it from being signed, in words.')),
      newerRevision: orNull(ref('ManualRevision')),
      confirmed,
    },
    'The work on one card.',
  ),
  CardWorkView: object({
    at: instant('When this was read'),
    defect: ref('DefectLine'),
    work: ref('CardWork'),
    people: list(
      object({ id: text('id'), name: text('name'), roles: list(text('role')) }),
      'Who may be named as a second person; none, where no step of the card needs one.',
    ),
  }),
  CardOffered: object({
    card: text('Which card.'),
    title: text('Its title.'),
    purpose: text('What it is for.'),
    reference: text('Manual reference with its revision.'),
    procedure: orNull(text('The procedure it does.')),
    eachDeparture: yesNo('It is owed before each departure.'),
    steps: whole('How many steps.'),
    minutes: whole('How long they take together.'),
  }),
  CardsOfDefect: object({
    at: instant('When this was read'),
    works: list(
      object({
        id: text('The work.'),
        card: text('Which card.'),
        title: text('Its title.'),
        procedure: orNull(text('The procedure it does.')),
        state: oneOf(['open', 'signed', 'stopped'], 'How it stands.'),
        startedBy: text('Who started it.'),
        startedAt: instant('When'),
        stepsDone: whole('How many steps are done.'),
        steps: whole('How many there are.'),
      }),
      'Work on cards, the last started first.',
    ),
    offered: list(ref('CardOffered'), 'Cards that may be started.'),
  }),
  CardList: object({
    at: instant('When this was read'),
    libraries: list(
      object({
        aircraftType: text('For which type.'),
        document: text('Which library.'),
        revision: text('Its revision.'),
        effectiveOn: text('The day from which it is valid, as the file says.'),
        inForce: yesNo('Its cards are those that are started now.'),
        loadedAt: instant('When it was loaded'),
      }),
      'Libraries of cards that were loaded, the newest first.',
    ),
    cards: list(
      object({
        aircraftType: text('For which type.'),
        card: text('Which card.'),
        title: text('Its title.'),
        purpose: text('What it is for.'),
        reference: text('Manual reference with its revision.'),
        newerRevision: orNull(ref('ManualRevision')),
        confirmed,
      }),
    ),
    warnings: list(
      object({ aircraftType: text('For which type.'), card: text('Which card.'), reason: text('In words.') }),
      'Where the library and the MEL in force do not fit, whichever was loaded last.',
    ),
    revisions: list(ref('ManualRevision'), 'Revisions of manuals that were recorded, newest first.'),
  }),
  CardsLoaded: object({
    document: text('Which library.'),
    revision: text('Its revision.'),
    cards: whole('How many.'),
    warnings: list(text('What nobody is held up by, and somebody should mend.')),
  }),
  CardConfirmed: object({ card: text('Which card.'), against: text('The revision.'), confirmed }),
};
