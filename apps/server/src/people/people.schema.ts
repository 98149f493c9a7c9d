import { instant, list, object, oneOf, orNull, type Shape, text, yesNo } from '../openapi/shape.js';

export const PEOPLE_SHAPES: Record<string, Shape> = {
  SessionView: object({
    at: instant('The time on the server'),
    person: object({ id: text('id'), name: text('Name.') }),
    operators: list(
      object({ id: text('id'), code: text('code'), name: text('name'), roles: list(text('role')) }),
      'The operators this person works for.',
    ),
    operator: orNull(
      object({
        id: text('id'),
        code: text('code'),
        name: text('name'),
        invented: yesNo('True for a demo operator.'),
        base: text('UTC or the zone of its calendar days.'),
        legalOriginal: oneOf(['paper', 'electronic'], 'Which record is the legal original.'),
      }),
    ),
    roles: list(text('role'), 'Roles for the chosen operator.'),
  }),
};
