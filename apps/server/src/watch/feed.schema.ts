import { instant, list, object, orNull, ref, type Shape, text, yesNo } from '../openapi/shape.js';

export const FEED_SHAPES: Record<string, Shape> = {
  CalendarFeed: object(
    {
      id: text('id'),
      label: text('What its owner calls it.'),
      of: text('Whose it is.'),
      aircraft: orNull(text('Id of the aircraft; null for every aircraft.')),
      everywhere: yesNo('It follows its person: every operator the person works for.'),
      registration: orNull(text('Mark of the aircraft.')),
      createdAt: instant('When it was made'),
      revokedAt: orNull(instant('When it was revoked')),
    },
    'An address under which a calendar program reads deadlines.',
  ),
  CalendarFeeds: object({ at: instant('When this was read'), feeds: list(ref('CalendarFeed'), 'The newest first.') }),
  CalendarFeedRevoked: object({ feed: ref('CalendarFeed') }),
  CalendarFeedMade: object({
    feed: ref('CalendarFeed'),
    address: orNull(text('The address; null when the request was repeated. Whoever knows it reads the deadlines.')),
  }),
};
