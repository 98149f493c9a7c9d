import { day, instant, list, object, oneOf, orNull, ref, type Shape, text, whole, yesNo } from '../openapi/shape.js';

const ENDINGS = ['arrived', 'returned', 'ramp', 'under-way', 'withdrawn'];
const REASONS = [
  'no-message',
  'flight-line',
  'day',
  'element',
  'nothing-reported',
  'receipt',
  'order',
  'future',
  'no-departure',
  'no-arrival',
  'conflict',
  'too-many',
  'unknown-registration',
  'receipt-in-future',
  'differs-from-person',
];
const CODES = ['nothing-open', 'may-fly', 'after-work', 'not-settled', 'may-not-fly'];

const counted = {
  blockMinutes: whole('Off blocks to on blocks.'),
  flightMinutes: whole('Airborne to touch-down.'),
  cycles: whole('Take-offs followed by a landing.'),
  landings: whole('Landings.'),
};

const leg = {
  id: text('id'),
  version: whole('The ETag; the highest version counts.'),
  aircraft: text('id'),
  flight: text('Flight number as in messages.'),
  scheduledOn: day('Scheduled UTC day of the flight.'),
  sequence: whole('Among the legs of this flight and day.'),
  from: orNull(text('Station; null when not known.')),
  to: orNull(text('Station; while under way where it is bound for; null when not known.')),
  ending: oneOf(ENDINGS, 'How it ended: `returned` flew, `ramp` did not.'),
  offBlockAt: instant('Off blocks, or the first instant known'),
  airborneAt: orNull(instant('Airborne')),
  landedAt: orNull(instant('Touch-down')),
  onBlockAt: orNull(instant('On blocks')),
  ...counted,
  missing: list(text('time'), 'Times that are not known.'),
  delays: list(
    object({ code: text('Two digits, AHM 730.'), minutes: whole('Minutes.') }),
    'Reasons of a late departure.',
  ),
  diverted: orNull(
    object({ from: text('Where it was to land.'), reason: orNull(text('Two digits.')) }, 'It was diverted.'),
  ),
  planned: orNull(text('Id of the planned flight that it is a leg of.')),
  source: oneOf(['messages', 'person'], 'Who says so. What a person says stands until a person changes it.'),
  message: orNull(text('Id of the message that brought this version.')),
  by: orNull(text('Name of the person.')),
  reason: orNull(text('Why the person entered or corrected it.')),
  writtenAt: instant('When this version was written'),
};

const used = object(
  {
    flights: whole('Flights.'),
    flightDays: whole('Days on which a flight began.'),
    lastFlightDayOn: orNull(day('The last of them.')),
    flightMinutes: whole('Airborne minutes.'),
    blockMinutes: whole('Block minutes.'),
    cycles: whole('Cycles.'),
    'engineMinutes?': whole('Of the engine that the interval is about.'),
    'engineCycles?': whole('Of that engine.'),
  },
  'What was used since the record of the defect.',
);

const itemStands = object(
  {
    used: orNull(ref('UsedSince')),
    words: text('What is left, in words.'),
    endsAt: orNull(instant('The exclusive end, where one is known')),
    over: orNull(yesNo('True when it is over; null when not known.')),
  },
  'How an open item stands.',
);

const answerStands = object(
  { verdict: oneOf(CODES, 'The answer.'), words: text('In words.'), why: text('The deciding reason.') },
  'The answer for a planned flight.',
);

/** What an act on movements changed. */
export const CHANGES = {
  items: list(
    object({
      defect: text('id'),
      number: text('Number of the defect.'),
      description: text('What it is.'),
      aircraft: text('id'),
      registration: text('Mark.'),
      before: ref('ItemStands'),
      after: ref('ItemStands'),
    }),
    'Open items whose standing changed.',
  ),
  answers: list(
    object({
      flight: text('id'),
      number: text('Flight number.'),
      offBlockAt: instant('Planned off-block'),
      aircraft: text('id'),
      registration: text('Mark.'),
      before: ref('AnswerStands'),
      after: ref('AnswerStands'),
    }),
    'Next flights whose answer changed.',
  ),
};

const trayLine = object(
  {
    id: text('id'),
    reason: oneOf(REASONS, 'What kind of thing is wrong.'),
    sentence: text('What is wrong, with the value.'),
    state: oneOf(['open', 'settled', 'mended'], 'Settled by a later message, or mended by a person.'),
    openedAt: instant('Since when it waits'),
    closedAt: orNull(instant('Until when it waited')),
    closedBy: orNull(text('Name of the person who mended it.')),
    why: orNull(text("The person's reason.")),
    mendedWith: orNull(text('Id of the delivery with the corrected text.')),
    message: text('Id of the message.'),
    text: text('The message as it came.'),
    inUse: yesNo('True while legs are worked out from the message.'),
    receivedAt: instant('When it was first received'),
    cameBy: oneOf(['text', 'json', 'mended', 'file'], 'How it came.'),
    sentBy: orNull(text('Name of the person who sent it.')),
    flight: orNull(text('Flight number.')),
    scheduledOn: orNull(day('Scheduled UTC day.')),
    registration: orNull(text('As in the message, letters and digits.')),
    aircraft: orNull(text('id')),
  },
  'Something about a message that waits for a person, or did.',
);

const received = object({
  at: instant('When it was taken in'),
  delivery: orNull(text('Id of the delivery; null when it brought nothing new and nothing was kept.')),
  messages: list(
    object({
      id: text('id'),
      line: whole('Where it begins in the text, from 1.'),
      state: oneOf(['read', 'tray', 'mended', 'duplicate'], 'A duplicate was known and changes nothing.'),
      type: orNull(oneOf(['MVT', 'MVA', 'DIV'], 'Kind of message.')),
      correction: yesNo('True for COR.'),
      flight: orNull(text('Flight number without leading zeros.')),
      scheduledOn: orNull(day('Scheduled UTC day.')),
      registration: orNull(text('Letters and digits.')),
      aircraft: orNull(text('id')),
      station: orNull(text('Station it speaks from.')),
      receivedAt: instant('When it was first received'),
      warnings: list(text('A reading that is not beyond doubt.')),
      unknownLines: list(text('Kept, and not understood.')),
      text: text('The message.'),
    }),
    'What was read, in the order of the text.',
  ),
  legs: list(ref('LegLine'), 'New versions of legs.'),
  tray: list(ref('TrayLine'), 'What waits for a person since this delivery.'),
  settled: list(ref('TrayLine'), 'What no longer waits.'),
  ...CHANGES,
});

export const MOVEMENT_SHAPES: Record<string, Shape> = {
  LegLine: object(leg, 'One version of a leg.'),
  UsedSince: used,
  ItemStands: itemStands,
  AnswerStands: answerStands,
  TrayLine: trayLine,
  MovementsReceived: received,
  MovementTray: object({ at: instant('When this was read'), entries: list(ref('TrayLine')) }),
  MovementMended: object({
    at: instant('When it was mended'),
    id: text('Id of the entry.'),
    received: orNull(ref('MovementsReceived')),
  }),
  LegWritten: object({ leg: ref('LegLine'), ...CHANGES }),
  AircraftLegs: object({
    at: instant('When this was read'),
    from: instant('Legs that left from then on'),
    aircraft: text('id'),
    registration: text('Mark.'),
    counters: object(
      {
        flights: whole('Legs that left the ground.'),
        flightDays: whole('Days in the base on which one began.'),
        ...counted,
        incomplete: whole('Legs with a time not known.'),
      },
      'What these legs used.',
    ),
    legs: list(
      object({ ...leg, history: list(ref('LegLine'), 'Earlier versions, the first one first.') }),
      'In the order flown.',
    ),
    delayed: list(
      object({
        leg: text('id'),
        flight: text('Flight number.'),
        offBlockAt: instant('Off blocks'),
        minutes: whole('Minutes of delay for aircraft defects.'),
        defects: list(
          object({
            id: text('id'),
            number: text('Number of the defect.'),
            description: text('What was written up.'),
            entry: orNull(text('MEL entry.')),
            state: text('How it stands.'),
            recordedAt: instant('When it was recorded'),
            closedAt: orNull(instant('When it was closed')),
          }),
          'Open then, or within the day before.',
        ),
      }),
      'Legs late for an aircraft defect (reason 41), beside the defects that may be why.',
    ),
  }),
};
