import { instant, list, object, oneOf, orNull, ref, type Shape, text, whole, yesNo } from '../openapi/shape.js';

const TRUTH = ['F', 'U', 'T'];
const CODES = ['nothing-open', 'may-fly', 'after-work', 'not-settled', 'may-not-fly'];

const truths = object(
  { now: oneOf(TRUTH, 'As things are.'), after: oneOf(TRUTH, 'After the work that can be done before the flight.') },
  'How it was answered.',
);

const flight = object(
  {
    id: text('id'),
    'number?': text('Flight number.'),
    from: text('Station.'),
    to: text('Station.'),
    offBlockAt: instant('Planned off-block'),
    'onBlockAt?': instant('Planned on-block'),
    'flightMinutes?': whole('Airborne minutes planned.'),
    'blockMinutes?': whole('Block minutes planned.'),
    'facts?': { type: 'object', additionalProperties: true, description: 'What is known of it, by fact key.' },
  },
  'A planned flight.',
);

const stop = object(
  {
    station: text('Where.'),
    beforeFlight: text('Id of the flight that leaves after it.'),
    groundMinutes: whole('Minutes on the ground.'),
    fits: orNull(yesNo('Whether the work fits; null when it has no figure.')),
  },
  'A stop where something can be done.',
);

const left = object({
  defect: text('Id of the defect.'),
  entry: orNull(text('MEL entry.')),
  row: orNull(text('Row.')),
  endsAt: orNull(instant('The exclusive end, where one is known')),
  sentence: text('What is left at departure.'),
  limits: list(
    object({ text: text('In words.'), countedIn: text('Unit.'), left: orNull(whole('Null when not known.')) }),
  ),
});

const repeat = object({
  work: text('Which work.'),
  text: text('What is to be done.'),
  defect: orNull(text('Id of the defect.')),
  because: text('Why it is owed.'),
  station: text('Where the aircraft stands.'),
  from: instant('From when'),
  until: instant('Until when'),
  minutes: orNull(whole('How long, in minutes.')),
  fits: orNull(yesNo('Whether it fits between the flights.')),
  possible: oneOf(TRUTH, 'Whether somebody can do it there.'),
});

const SINGLE_KINDS = ['fix', 'change-row', 'do-work', 'send-person', 'leave-out'];

export const NEXT_FLIGHTS_SHAPES: Record<string, Shape> = {
  PlannedFlight: flight,
  Stop: stop,
  NextFlight: object(
    {
      flight: ref('PlannedFlight'),
      verdict: ref('Verdict'),
      ifFlown: orNull(text('Id of the flight that has to be flown after all for this answer to matter.')),
      groundMinutes: whole('Minutes on the ground before it.'),
      lateMinutes: orNull(whole('By how much its work would make it late.')),
      left: list(left, 'What is left of each interval at its departure.'),
      repeats: list(repeat, 'Work that is owed again before it.'),
      changed: list(
        object({
          id: text('Which condition.'),
          about: orNull(text('The item it is about; null for the whole aircraft.')),
          was: orNull(truths),
          is: orNull(truths),
          because: text('Why.'),
          says: text('The condition with its reason, in one sentence.'),
        }),
        'Conditions answered otherwise than for the flight before.',
      ),
    },
    'One flight of the plan, judged as if all before it were flown as planned.',
  ),
  Saver: object(
    {
      kind: oneOf([...SINGLE_KINDS, 'several'], 'What kind of change.'),
      'parts?': list(
        object({ kind: oneOf(SINGLE_KINDS, 'What kind of change.'), words: text('In words.') }),
        'Of several changes that help only together: each of them.',
      ),
      text: text('In words.'),
      size: whole('How many changes it is.'),
      minutes: orNull(whole('Its work, in minutes.')),
      stops: list(ref('Stop'), 'Where it can be done, the latest first.'),
      'defects?': list(text('id')),
      'row?': text('The row.'),
      'work?': list(text('Which work.')),
      'flights?': list(text('id')),
      keeps: whole('Leading flights kept with it.'),
    },
    'One way to save the first flight that breaks.',
  ),
  NextFlights: object(
    {
      at: instant('When this was computed'),
      aircraft: text('id'),
      registration: text('Mark.'),
      flights: list(ref('NextFlight')),
      kept: whole('Leading flights known to be kept.'),
      possible: whole('Leading flights that may be kept if the unknown turns out well.'),
      breaks: orNull(
        object({
          flight: text('id'),
          station: text('Where.'),
          verdict: oneOf(CODES, 'Its answer.'),
          because: list(text('A sentence.')),
        }),
      ),
      savers: list(ref('Saver'), 'The fewest changes first.'),
      saversComplete: yesNo('False reads: these, perhaps others.'),
      rows: list(
        object({
          entry: text('MEL entry.'),
          unit: text('Unit.'),
          row: orNull(text('Row.')),
          signed: yesNo('Signed?'),
        }),
      ),
      shownBest: yesNo('False when a better choice of rows may exist.'),
    },
    'The flights planned for one aircraft, one after another.',
  ),
};
