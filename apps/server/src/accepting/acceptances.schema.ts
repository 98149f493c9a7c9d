import { instant, list, object, oneOf, orNull, ref, type Shape, text, whole, yesNo } from '../openapi/shape.js';

const CODES = ['nothing-open', 'may-fly', 'after-work', 'not-settled', 'may-not-fly'];

export const ACCEPTANCE_SHAPES: Record<string, Shape> = {
  AcceptanceLine: object(
    {
      role: text('As whom: commander or dispatcher.'),
      accepted: yesNo('False when it was declined.'),
      reason: orNull(text('Why it was declined.')),
      by: text('Name.'),
      at: instant('When'),
      void: list(text('Why it no longer stands; nothing when it does.')),
    },
    'An acceptance of the aircraft for a flight.',
  ),
  AcceptanceView: object({
    at: instant('When this was read'),
    aircraft: text('id'),
    registration: text('Mark.'),
    flight: ref('FlightLine'),
    verdict: oneOf(CODES, 'The answer.'),
    words: text('The answer in words.'),
    reasons: list(text('reason')),
    goodUntil: orNull(text('Until when what is shown is good.')),
    items: list(
      object({
        defect: text('id'),
        number: text('Number.'),
        title: text('What.'),
        basis: orNull(text('What the deferral stands on.')),
        until: orNull(text('What is left, in words.')),
        limits: list(text('What it asks of the flight.')),
        operations: list(object({ work: text('Which.'), text: text('The (O) procedure.') })),
      }),
    ),
    left: whole('How many things are left on the aircraft.'),
    given: list(ref('AcceptanceLine')),
  }),
  AcceptanceGiven: object({
    accepted: yesNo('False when it was declined.'),
    role: text('As whom.'),
    reason: orNull(text('Why it was declined.')),
  }),
};
