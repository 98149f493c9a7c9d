import { instant, list, object, orNull, type Shape, text, whole, yesNo } from '../openapi/shape.js';

export const RECURRENCE_SHAPES: Record<string, Shape> = {
  RecurrenceView: object({
    at: instant('When this was read'),
    defect: text('id'),
    number: text('Number.'),
    rule: text("The operator's rule, in words."),
    times: whole('How many write-ups, this one counted.'),
    repetitive: yesNo('True when the rule says so.'),
    writeUps: list(
      object({
        defect: text('id'),
        number: text('Number.'),
        recordedAt: text('When it was recorded in the log, with the offset as written.'),
        description: text('What was seen.'),
        faultMessage: orNull(text('The message the aircraft showed.')),
        system: orNull(text('System (ATA chapter).')),
        entry: orNull(text('MEL entry.')),
        units: list(text('unit')),
        state: text('How it ended, or how it stands.'),
        work: list(text('What was done.')),
        alikeBy: list(text('By what it is like this one.')),
        certain: yesNo('False where a counter that matters is not known.'),
      }),
      'This write-up first, then those before it that are like it.',
    ),
    decided: list(
      object({
        repetitive: yesNo('What was decided.'),
        reason: text('Why, and what is done.'),
        by: text('Name.'),
        at: instant('When'),
      }),
      'What maintenance control decided, the newest last.',
    ),
  }),
  RecurrenceDecided: object({ repetitive: yesNo('What was decided.'), reason: text('Why.') }),
};
