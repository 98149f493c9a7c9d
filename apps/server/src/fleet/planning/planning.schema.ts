import { list, object, type Shape, text, whole } from '../../openapi/shape.js';

export const PLANNING_SHAPES: Record<string, Shape> = {
  FlightsPlanned: object({
    planned: whole('Flights planned by this list.'),
    kept: whole('Flights of the list that were planned just so already.'),
    aircraft: list(object({ id: text('id'), registration: text('Mark.') }), 'Those that got flights.'),
  }),
};
