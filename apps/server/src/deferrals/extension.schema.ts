import { day, instant, list, object, oneOf, orNull, ref, type Shape, text, whole, yesNo } from '../openapi/shape.js';

const STATES = ['asked', 'granted', 'declined', 'withdrawn', 'replaced'];
const NOTICES = ['none', 'due', 'overdue', 'sent', 'acknowledged'];

const step = object({ by: text('Who entered it.'), at: instant('When'), reference: text('Reference.') });

const noticeLine = object(
  {
    state: oneOf(NOTICES, 'Where the notice stands.'),
    words: text('The same in words.'),
    late: yesNo('True when it was not sent by its time.'),
    dueAt: orNull(instant('By when the authority must have been told')),
    address: text('Address of the printable document.'),
    sent: orNull(step),
    acknowledged: orNull(step),
  },
  'The notice to the authority.',
);

const extensionLine = object(
  {
    id: text('id'),
    defect: text('Id of the defect.'),
    number: text('Its number.'),
    aircraft: text('Id of the aircraft.'),
    registration: text('Its mark.'),
    entry: orNull(text('MEL entry.')),
    title: text('First words of the description.'),
    state: oneOf(STATES, 'Where it stands.'),
    words: text('The same in words.'),
    base: text('UTC or the zone the days are counted in.'),
    asked: object({
      by: text('Who asked.'),
      at: instant('When'),
      reason: text("The reason, outside the operator's control."),
      whyNotFixed: text('Why it was not rectified in time.'),
      plan: text('The plan.'),
      parts: orNull(text('Parts that are waited for.')),
      days: orNull(whole('Calendar days asked for; null asks for the longest allowed.')),
      agreement: orNull(text("Reference of the authority's agreement.")),
    }),
    decided: orNull(
      object({
        by: text('Who granted, declined or withdrew it.'),
        at: instant('When'),
        because: orNull(text('Why it was declined or withdrawn.')),
      }),
    ),
    lastDayBefore: orNull(day('The last day before.')),
    lastDay: orNull(day('The last day since.')),
    endsBefore: orNull(instant('The exclusive end before')),
    endsAt: orNull(instant('The exclusive end since')),
    notice: orNull(ref('NoticeLine')),
    version: whole('Version; the ETag.'),
  },
  'One extension of a rectification interval.',
);

const documentLine = object(
  {
    words: text('The document in words: "permit PF-12".'),
    authority: text('The authority that issued it.'),
    limit: text("The limit in the document's own terms."),
    conditions: list(text('A condition in its own terms.')),
    from: text('From when it is good.'),
    until: text('Until when it is good (exclusive).'),
    flights: orNull(whole('How many flights; null when it names no number.')),
    kindsOfFlight: orNull(list(text('kind'), 'The kinds of flight it allows; null when it names none.')),
    enteredBy: text('Who entered it.'),
    enteredAt: instant('When it was entered here'),
  },
  'What an authority allows beyond the deadline. It moves no deadline.',
);

export const EXTENSION_SHAPES: Record<string, Shape> = {
  DocumentLine: documentLine,
  NoticeLine: noticeLine,
  ExtensionLine: extensionLine,
  ExtensionRegister: object({
    at: instant('When this was read'),
    base: text('UTC or the zone of the operator.'),
    extensions: list(ref('ExtensionLine'), 'The newest first.'),
    overdue: whole('How many notices of these are overdue.'),
    more: yesNo('True when there are older ones than these.'),
  }),
  ExtensionDone: object({ extension: ref('ExtensionLine') }),
  ExtensionOffer: object(
    {
      at: instant('When this was read'),
      offer: orNull(
        object({
          procedure: text("The operator's approved procedure."),
          lastDayBefore: orNull(day('The last day now.')),
          lastDay: orNull(day('The last day if it were granted now.')),
          endsAt: orNull(instant('The exclusive end if it were granted now')),
          noticeDueAt: orNull(instant('By when the authority would have to be told')),
          explanation: orNull(text('The arithmetic.')),
        }),
      ),
      refused: orNull(
        object({
          type: text('Address of the type of refusal.'),
          sentence: text('Why the operator may not extend.'),
          next: text('What to do next.'),
          paragraph: text('The paragraph it comes from.'),
        }),
      ),
      extensions: list(ref('ExtensionLine'), 'Those of this defect, the newest first.'),
    },
    'What an extension granted now would give. An unwelcome answer is an answer.',
  ),
};
