import { instant, list, object, orNull, ref, type Shape, text, yesNo } from '../openapi/shape.js';

const difference = object(
  {
    defect: text('id'),
    number: text('Number of the defect.'),
    zone: text('The zone its days are counted in.'),
    tzdbBefore: text('Time-zone data it was signed with.'),
    tzdbAfter: text('Time-zone data that reads it otherwise.'),
    endsBefore: instant('The exclusive end as signed'),
    endsAfter: instant('The exclusive end by the newer data'),
    inForce: instant('The one that counts: the earlier until somebody confirmed'),
    foundAt: instant('When it was found'),
    confirmedAt: orNull(instant('When it was confirmed')),
  },
  'A deadline that newer time-zone data ends at another instant. Its last day stays.',
);

export const ZONE_DATA_SHAPES: Record<string, Shape> = {
  ZoneDifference: difference,
  ZoneDataView: object({
    at: instant('When this was read'),
    tzdb: text('Time-zone data of this server.'),
    newest: orNull(text('The newest that open deadlines were counted with; null when nobody looked yet.')),
    older: yesNo('True when this server has older data: it computes no deadlines.'),
    differences: list(ref('ZoneDifference')),
  }),
};
