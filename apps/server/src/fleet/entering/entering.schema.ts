import { instant, list, object, orNull, ref, type Shape, text, whole, yesNo } from '../../openapi/shape.js';

export const ENTERING_SHAPES: Record<string, Shape> = {
  AircraftEntry: object({
    id: text('id'),
    registration: text('Mark.'),
    type: text('Type.'),
    serial: orNull(whole('Serial number; null when nobody said.')),
    configuration: orNull(list(text('code'), 'Configuration codes fitted; null when nobody said.')),
    base: orNull(text('Code of the station where it is based.')),
    retiredAt: orNull(instant('Since when it is out of the fleet')),
    version: whole('Version, for If-Match.'),
  }),
  AircraftEntries: object({
    at: instant('When this was read'),
    aircraft: list(ref('AircraftEntry'), 'Those that left the fleet included.'),
    types: list(
      object({
        type: text('Type.'),
        mel: orNull(text('The MEL in force for it; null: none was loaded.')),
        configurations: list(text('code'), 'Codes that its entries are told apart by.'),
      }),
    ),
    stations: list(object({ code: text('code'), name: text('name') })),
  }),
  AircraftEntered: object({ aircraft: ref('AircraftEntry') }),
  StationEntered: object({ code: text('code') }),
  OrganisationEntered: object({ id: text('id') }),
  FlightEntered: object({ flight: ref('FlightLine') }),
  PlannedFlights: object({
    registration: text('Mark.'),
    flights: list(ref('FlightLine'), 'In order of off blocks, the first thousand of them.'),
    hasMore: yesNo('Whether more are planned than are listed.'),
  }),
};
