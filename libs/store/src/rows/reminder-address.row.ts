import { EntitySchema } from 'typeorm';
import { id, instant, key, nullable, text, version, whole, yesNo } from './column.js';
import { toMember, within } from './foreign-key.js';

/**
 * Where reminders go: a mailbox, or an endpoint of a program. It begins when somebody enters it, and ends when it is
 * turned off, when the endpoint says that it is gone, or when its owner no longer works for the operator.
 */
export interface ReminderAddressRow {
  operatorId: string;
  id: string;
  /** Who entered it. */
  personId: string;
  /** True when it is the operator's own and not that of the person. */
  forAll: boolean;
  kind: 'email' | 'webhook';
  /** The mailbox, or the address of the endpoint. */
  address: string;
  label: string;
  /** Null for every aircraft of the operator. */
  aircraftId: string | null;
  /** What an endpoint's messages are signed with, as base64; it must be kept readable to sign with. Null for a mailbox. */
  secret: string | null;
  /** The one before, which signs beside it until then, so that the reader can change over. */
  formerSecret: string | null;
  formerUntil: string | null;
  createdAt: string;
  /** Since when it is known that its owner reads it; null: nothing is sent there but a code. */
  confirmedAt: string | null;
  /** Of the last code sent there. */
  codeHash: string | null;
  codeSentAt: string | null;
  /** Why the code could not be sent. */
  codeProblem: string | null;
  /** How often that code was told wrong, or right. */
  codeTries: number;
  codesAsked: number;
  endedAt: string | null;
  endedBecause: string | null;
  version: number;
}

export const ReminderAddressTable = new EntitySchema<ReminderAddressRow>({
  name: 'reminder_address',
  columns: {
    operatorId: key(),
    id: key(),
    personId: id(),
    forAll: yesNo({ default: false }),
    kind: text(),
    address: text(),
    label: text(),
    aircraftId: id(nullable),
    secret: text(nullable),
    formerSecret: text(nullable),
    formerUntil: instant(nullable),
    createdAt: instant(),
    confirmedAt: instant(nullable),
    codeHash: text(nullable),
    codeSentAt: instant(nullable),
    codeProblem: text(nullable),
    codeTries: whole({ default: 0 }),
    codesAsked: whole({ default: 0 }),
    endedAt: instant(nullable),
    endedBecause: text(nullable),
    version: version(),
  },
  indices: [{ name: 'reminder_address_of_person', columns: ['operatorId', 'personId'] }],
  checks: [
    { name: 'reminder_address_kind', expression: "kind in ('email', 'webhook')" },
    { name: 'reminder_address_signs', expression: "(kind = 'webhook') = (secret is not null)" },
    { name: 'reminder_address_code', expression: '(code_hash is null) = (code_sent_at is null)' },
    { name: 'reminder_address_ended', expression: '(ended_at is null) = (ended_because is null)' },
  ],
  foreignKeys: [
    toMember('reminder_address_person', 'personId'),
    within('reminder_address_aircraft', 'aircraft', 'aircraftId'),
  ],
});
