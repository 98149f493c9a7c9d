import { instant, list, object, oneOf, orNull, ref, type Shape, text, whole, yesNo } from '../../openapi/shape.js';
import { ADDRESS_KINDS } from './bodies.js';

export const REMINDER_SHAPES: Record<string, Shape> = {
  ReminderAddress: object(
    {
      id: text('id'),
      kind: oneOf(ADDRESS_KINDS, 'A mailbox, or an endpoint of a program.'),
      address: text('Where it goes.'),
      label: text('What its owner calls it.'),
      of: text('Who entered it.'),
      mine: yesNo('You entered it.'),
      forAll: yesNo('It is the operator’s own, and stays when that person leaves.'),
      mayEnd: yesNo('You may turn it off.'),
      aircraft: orNull(text('Id of the aircraft; null for every aircraft.')),
      registration: orNull(text('Mark of the aircraft.')),
      createdAt: instant('When it was entered'),
      confirmedAt: orNull(
        instant('Since when it is known that its owner reads it; until then nothing is sent there'),
      ),
      waitsForCode: yesNo('A code was sent there, and can be told.'),
      codeSentAt: orNull(instant('When the code was sent')),
      codeProblem: orNull(text('Why the code could not be sent.')),
      endedAt: orNull(instant('Since when nothing is sent there')),
      endedBecause: orNull(text('Why.')),
      twoSecretsUntil: orNull(instant('Until when the secret before signs beside the new one')),
    },
    'Where reminders go.',
  ),
  Reminder: object(
    {
      id: text('id; also the webhook-id, and what the Message-ID begins with.'),
      defect: orNull(text('id of the item; null of what is past its period of keeping')),
      number: orNull(text('Its number.')),
      title: text('What it is.'),
      share: whole('Percent of what is left at which it was due; 0 at the end.'),
      left: text('What was left.'),
      address: text('id of the address'),
      to: text('Where it goes.'),
      state: oneOf(
        ['waiting', 'sent', 'not delivered', 'refused', 'passed over', 'dropped'],
        'Not delivered: tried in vain, and tried again.',
      ),
      words: text('How it stands, in a sentence.'),
      noticedAt: instant('When the share was noticed'),
      attempts: whole('How often it was tried.'),
      triedAt: orNull(instant('When it was last tried')),
      nextAt: orNull(instant('When it is tried next')),
      sentAt: orNull(instant('When it was handed over')),
    },
    'One reminder, of a deferral or of what is past its period of keeping, to one address.',
  ),
  Reminders: object({
    at: instant('When this was read'),
    base: text('UTC or the zone of the operator’s days.'),
    shares: list(text('share'), 'At which shares of what is left reminders go out.'),
    sends: object({
      mail: yesNo('This server knows a mail server.'),
      endpoints: yesNo('This server sends to endpoints.'),
      inside: yesNo('It may reach machines inside.'),
    }),
    mayAddForAll: yesNo('You may enter addresses of the operator.'),
    addresses: list(ref('ReminderAddress'), 'Yours and those of the operator, the newest first.'),
    reminders: list(ref('Reminder'), 'To these addresses, the newest first.'),
    undelivered: whole('How many of them wait after an attempt in vain, or were refused.'),
    more: yesNo('There are older ones.'),
  }),
  ReminderAddressEntered: object({
    address: ref('ReminderAddress'),
    secret: orNull(
      text('What messages to an endpoint are signed with; told once, null when the request was repeated.'),
    ),
  }),
  ReminderAddressEnded: object({ address: ref('ReminderAddress') }),
  ReminderAddressConfirmed: object({ address: ref('ReminderAddress') }),
};
