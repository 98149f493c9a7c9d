import { instant, object, orNull, type Shape, text, whole, yesNo } from '../openapi/shape.js';

const corrected = {
  field: text('What reads otherwise since, in words.'),
  was: orNull(text('What was written; null when nothing was.')),
  now: text('What it reads now.'),
  reason: text('Why.'),
  by: text('Who corrected it.'),
};

export const CORRECTION_SHAPES: Record<string, Shape> = {
  CorrectionLine: object(
    {
      ...corrected,
      struck: orNull(text('How that stands in the line of the history, where it is struck.')),
      looked: orNull(text('Who looked and signed as the second person, where one was needed.')),
      at: instant('When that was entered'),
    },
    'Something that was put right afterwards; what was written stays readable.',
  ),
  CorrectionWaiting: object(
    {
      id: text('id'),
      seq: whole('The line of the history that it would correct.'),
      ...corrected,
      at: instant('When it was asked for'),
    },
    'A correction that waits for a second person. Until then all reads as it was, and while the item is open the aircraft does not leave.',
  ),
  Correctable: object(
    {
      field: text('Name under which it is corrected.'),
      part: whole('Which of several, from 0.'),
      words: text('The same in words.'),
      reads: orNull(text('What stands there now.')),
      secondLook: yesNo('It decides something, so a second person looks and signs.'),
    },
    'Something of an act that can be corrected.',
  ),
  PutRightOtherwise: object(
    {
      field: text('Name under which it is asked for.'),
      words: text('The same in words.'),
      because: text('Why no correction touches it.'),
      instead: text('What to do instead.'),
    },
    'Something of an act that no correction touches.',
  ),
};
