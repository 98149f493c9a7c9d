import { day, instant, list, object, oneOf, orNull, ref, type Shape, text, whole, yesNo } from '../openapi/shape.js';

const CODES = ['nothing-open', 'may-fly', 'after-work', 'not-settled', 'may-not-fly'];

const flightLine = object(
  {
    id: text('id'),
    number: text('Flight number.'),
    from: text('Station.'),
    fromName: text('Name of the station.'),
    to: text('Station.'),
    toName: text('Name of the station.'),
    offBlockAt: instant('Planned off-block'),
    offBlockLocal: text('The same as read on a clock at the station.'),
    onBlockAt: orNull(instant('Planned on-block')),
    flightMinutes: orNull(whole('Airborne minutes planned.')),
  },
  'A planned flight.',
);

const deadlineLine = object(
  {
    lastDay: orNull(day('The last day, in the base.')),
    endsAt: orNull(instant('The exclusive end')),
    base: text('UTC or the zone the days are counted in.'),
    tzdb: text('Version of the time-zone data.'),
    words: text('What is left, in words.'),
    over: yesNo('True when it is over.'),
    counted: yesNo('True when it ends by flights, hours or cycles, on a day that nobody knows yet.'),
    parts: list(
      object({
        unit: text('What it is counted in.'),
        countedIn: text('The unit of the numbers: hours are given in minutes.'),
        used: orNull(whole('Null when not known.')),
        left: orNull(whole('Null when not known.')),
        endsAt: orNull(instant('A known end of it')),
        over: orNull(yesNo('Null when not known.')),
        text: text('In words.'),
      }),
      'Each limit in its own unit.',
    ),
    projected: orNull(
      object(
        {
          state: oneOf(['projected'], 'A forecast, never a limit.'),
          endsAt: instant('When it is expected to end'),
          lastDay: day('The day of it, in the base.'),
          method: oneOf(['plan', 'mean-use'], 'From the planned flights, or beyond them from the mean use.'),
          sentence: text('How it was found.'),
        },
        'Where what is counted from use is expected to end.',
      ),
    ),
  },
  'Until when a deferral is good.',
);

const fleetLine = object(
  {
    id: text('id'),
    registration: text('Mark.'),
    type: text('Type.'),
    openItems: whole('How many items are open.'),
    unanswered: whole('How many write-ups have no answer.'),
    leftOnAircraft: whole('How many things are left on the aircraft.'),
    nextDeadline: orNull(
      object({
        defect: text('id'),
        number: text('Number of the defect.'),
        title: text('What.'),
        deadline: ref('DeadlineLine'),
      }),
    ),
    nextFlight: orNull(
      object({
        flight: ref('FlightLine'),
        accepted: list(ref('AcceptanceLine')),
        verdict: oneOf(CODES, 'The answer.'),
        words: text('The answer in words.'),
        why: text('The deciding reason.'),
      }),
    ),
    ahead: orNull(
      object(
        {
          flights: whole('How many of the planned flights were looked at.'),
          kept: whole('Leading flights known to be kept.'),
          possible: whole('Leading flights that may be kept if the unknown turns out well.'),
          breaks: orNull(
            object({
              flight: ref('FlightLine'),
              verdict: oneOf(CODES, 'Its answer.'),
              words: text('The answer in words.'),
            }),
          ),
        },
        'Its next flights at a glance; null without any. With reasons: next-flights of the aircraft.',
      ),
    ),
  },
  'One aircraft as maintenance control sees it.',
);

const leftLine = object(
  {
    id: text('id'),
    defect: orNull(text('Id of the defect that owns it.')),
    defectNumber: orNull(text('Its number.')),
    kind: text('What kind of thing.'),
    where: text('Where it is.'),
    tag: text('Number on its collar, streamer, placard or label.'),
    undo: text('How it is undone.'),
    owner: text('What it belongs to, in words; "nobody" for an orphan.'),
  },
  'Something left on the aircraft.',
);

const aircraftView = object({
  at: instant('When this was read'),
  id: text('id'),
  registration: text('Mark.'),
  type: text('Type.'),
  serial: orNull(whole('Serial number.')),
  configuration: orNull(list(text('code'))),
  version: whole('Version; the ETag.'),
  mel: orNull(
    object({
      document: text('document'),
      revision: text('revision'),
      effectiveOn: day('day'),
      notice: orNull(text('notice')),
    }),
  ),
  items: list(ref('DefectLine')),
  left: list(ref('LeftLine')),
  flights: list(ref('FlightLine')),
});

export const FLEET_SHAPES: Record<string, Shape> = {
  FlightLine: flightLine,
  DeadlineLine: deadlineLine,
  FleetLine: fleetLine,
  Fleet: object({
    at: instant('When this was read'),
    base: text('The base zone.'),
    aircraft: list(ref('FleetLine')),
  }),
  LeftLine: leftLine,
  AircraftView: aircraftView,
};
