import { instant, list, object, oneOf, orNull, ref, type Shape, text, whole, yesNo } from '../openapi/shape.js';

const registerLine = object(
  {
    id: text('id'),
    kind: text('What kind of thing.'),
    where: text('Where it is.'),
    tag: text('Number on its collar, streamer, placard or label.'),
    undo: text('How it is undone.'),
    owner: text('What it belongs to, in words; "nobody" for an orphan.'),
    ownerKind: orNull(oneOf(['defect', 'modification', 'directive', 'permit'], 'What kind of owner.')),
    ownerUntil: orNull(instant('The last instant of the document that owns it')),
    defect: orNull(text('Id of the defect that owns it.')),
    alsoFor: list(object({ defect: text('id'), number: text('Number.') }), 'Other open items that need it too.'),
    under: orNull(text('The procedure it was left by.')),
    fittedBy: text('Name.'),
    fittedAt: instant('When it was entered as fitted'),
    removedBy: orNull(text('Name.')),
    removedAt: orNull(instant('When it was entered as undone')),
    verifiedBy: orNull(text('Who saw that it is undone.')),
    verifiedAt: orNull(instant('When that was signed')),
  },
  'A line of the register.',
);

const handedOver = {
  id: text('id'),
  by: text('Who gives.'),
  to: text('Who is to take over.'),
  note: text('What the next shift should know.'),
  at: instant('When it was given'),
  left: list(text('What is left on the aircraft, and for what.')),
  open: list(text('What is open.')),
};

export const REGISTER_SHAPES: Record<string, Shape> = {
  RegisterLine: registerLine,
  RegisterView: object({
    at: instant('When this was read'),
    aircraft: text('id'),
    registration: text('Mark.'),
    version: whole('Version of the aircraft; the ETag.'),
    left: list(ref('RegisterLine')),
    orphans: list(text('What is left without an owner: with any of these the aircraft may not fly.')),
    openWork: list(text('Work that is not released, and tools that are not returned.')),
    open: list(text('Open items, in words.')),
    undone: list(ref('RegisterLine'), 'What was undone last.'),
    corrections: list(
      object({
        id: text('id'),
        item: text('The thing.'),
        field: text('What is wrong.'),
        was: text('What stands there.'),
        now: text('What should stand there.'),
        reason: text('Why.'),
        by: text('Who asks.'),
        askedBy: text('Id of the person who asks, and may take it back.'),
      }),
      'Corrections that wait for a second person to look.',
    ),
    offered: orNull(object(handedOver, 'A hand-over that nobody has taken yet.')),
    lastTaken: orNull(
      object({
        ...handedOver,
        takenBy: text('Who took over.'),
        takenAt: instant('When'),
        remarks: text('What they said.'),
      }),
    ),
  }),
  RegisterDone: object({ done: yesNo('True.'), by: text('Who did it.') }),
};
