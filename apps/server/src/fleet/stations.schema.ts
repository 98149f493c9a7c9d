import { instant, list, object, orNull, type Shape, text, whole } from '../openapi/shape.js';

const person = object(
  {
    id: text('id'),
    person: orNull(text('Name; null: nobody authorised and equipped is there.')),
    equipment: list(text('What the person has there.')),
    from: orNull(instant('From when; null: already there')),
    fromLocal: orNull(text('The same as read on a clock at the station.')),
    until: orNull(instant('Until when, exclusive; null: standing')),
    untilLocal: orNull(text('The same as read on a clock at the station.')),
    source: text('Where this is known from.'),
    enteredBy: orNull(text('Name.')),
    enteredAt: instant('When it was entered here'),
    version: whole('Version, for If-Match.'),
  },
  'What is known of the people at a station.',
);

export const STATION_SHAPES: Record<string, Shape> = {
  Stations: object({
    at: instant('When this was read'),
    stations: list(
      object({
        code: text('Station.'),
        name: text('Its name.'),
        zone: text('IANA zone of its clocks.'),
        people: list(person, 'Empty: nobody has said who is there, so it is not known.'),
      }),
    ),
    maintain: list(object({ id: text('id'), name: text('name') }), 'Members who may be named.'),
  }),
  StationCoverEntered: object({ id: text('id') }),
};
