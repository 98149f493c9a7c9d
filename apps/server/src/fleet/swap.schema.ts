import { list, object, oneOf, orNull, type Shape, text, whole } from '../openapi/shape.js';

export const SWAP_SHAPES: Record<string, Shape> = {
  SwapProposal: object(
    {
      answer: oneOf(['proposed', 'impossible', 'not-offered'], 'What came of it.'),
      because: text('In one sentence.'),
      'assignments?': list(
        object({
          rotation: text('Id of the aircraft it was planned for.'),
          planned: text('Mark of the aircraft it was planned for.'),
          aircraft: text('Mark of the aircraft that would fly it.'),
          flights: list(text('Flight.')),
          minutes: orNull(whole('Outstanding work, in minutes; null when some has no figure.')),
        }),
        'One aircraft for each rotation.',
      ),
      'changedFlights?': whole('Flights flown by another aircraft than planned.'),
      'minutes?': whole('All outstanding work that has a figure.'),
      'withoutFigure?': whole('Flights before which some work has no figure.'),
      'flights?': list(
        object({
          flight: text('Flight.'),
          because: list(text('Why an aircraft cannot.')),
          couldBe: list(text('Mark of an aircraft that could fly it, but is needed for the others.')),
        }),
        'The fewest flights that cannot be covered together, or those of which operations have not spoken.',
      ),
    },
    'A proposal to exchange rotations. Operations decide; the answer for each aircraft is then asked anew.',
  ),
};
