import { anything, instant, list, object, orNull, type Shape, text, whole } from '../openapi/shape.js';

export const RECORD_SHAPES: Record<string, Shape> = {
  RecordEntries: object({
    entries: list(
      object({
        id: text('id'),
        what: text('What was done.'),
        by: text('Name.'),
        enteredAt: instant('When'),
        enteredAtBase: instant('The same as a clock at the base reads it, with its offset'),
        leaf: text('Leaf hash, hex.'),
        number: orNull(whole('Its number, once sealed.')),
        sealedAt: orNull(instant('When it was sealed')),
        payload: anything('What was recorded.'),
      }),
    ),
  }),
  RecordHead: object({ size: whole('How many entries.'), root: orNull(text('Root hash, hex.')) }),
};
