import { HOLD_KINDS } from '#store';
import {
  anything,
  instant,
  list,
  object,
  oneOf,
  orNull,
  record,
  type Shape,
  text,
  whole,
  yesNo,
} from '../openapi/shape.js';

const SIGNED = {
  log: text('Whose record it is.'),
  size: whole('Over how many entries.'),
  root: text('Root hash, hex.'),
  'signedAt?': instant('When it was signed'),
  'signature?': text('Ed25519, hex.'),
};

const PROOF = {
  format: text('proviso-record-proof/1'),
  log: text('Whose record it is.'),
  head: object(SIGNED, 'The newest signed head; bare where none is signed.'),
  earlier: orNull(
    object({ head: object(SIGNED), proof: list(text('Hash, hex.'), 'How the record grew since that head.') }),
  ),
  entries: list(
    object({
      number: whole('Its number.'),
      canonical: text('The entry word for word: the text whose UTF-8 bytes were hashed.'),
      leaf: text('Leaf hash, hex.'),
      proof: list(text('Hash, hex.'), 'From the leaf to the head.'),
    }),
  ),
};

const AGE = {
  made: orNull(instant('When the last was made')),
  hours: orNull(whole('Its age in whole hours.')),
  oldestHours: whole('From this age on it counts as old.'),
  old: yesNo('It is old, or there is none.'),
};

const KEPT = {
  since: instant('What the period is counted from'),
  keptUntil: instant('When it ended'),
  notedAt: orNull(instant('When it was noted and told; null until the next look, twice a day')),
  held: yesNo('It is kept all the same until it is released.'),
};

const HOLDS = list(
  object({
    id: text('id'),
    kind: oneOf(HOLD_KINDS, 'What is held.'),
    subject: text('id of what is held'),
    name: text('Its name as it is known today.'),
    reason: text('Why.'),
    placedAt: instant('Since when'),
    by: text('Name.'),
  }),
);

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
  RecordHeads: object({
    heads: list(object({ ...SIGNED, key: text('Fingerprint of the key it was signed with.') })),
    keys: list(object({ fingerprint: text('First 16 hex digits of its SHA-256.'), pem: text('The public key.') })),
  }),
  RecordProof: object(PROOF, 'What `proviso record check` checks without the house.'),
  RecordHistory: object(
    {
      ...PROOF,
      about: object({
        operator: text('Name and code.'),
        subject: text('Aircraft or defect.'),
        madeAt: instant('When it was made'),
        notIn: whole('Entries written since the head, which are not in it.'),
      }),
      people: record(
        orNull(object({ name: text('Name.'), licence: orNull(text('Licence number.')) })),
        'Who stands behind each reference; null for an erased person. Told, not proved.',
      ),
      cautions: list(text('A caution.')),
      check: text('How to check it.'),
    },
    'A whole history, re-checkable without the house.',
  ),
  Retention: object({
    at: instant('When this was read'),
    months: object({ log: whole('The log, after its last entry.'), work: whole('Records of work, after release.') }),
    says: text('What this list does not do.'),
    erasesLeavers: yesNo('The program erases leavers by itself, as the operator settled.'),
    holds: HOLDS,
    logs: list(object({ id: text('id'), registration: text('Mark of the aircraft.'), ...KEPT })),
    defects: list(object({ id: text('id'), number: text('Number of the defect.'), ...KEPT })),
    people: list(object({ id: text('id'), name: text('Name.'), reference: text('In the record.'), ...KEPT })),
  }),
  Holds: object({ holds: HOLDS }),
  RecordState: object({
    at: instant('When this was read'),
    size: whole('How many entries.'),
    root: orNull(text('Root hash, hex.')),
    mostVerified: whole('A longer record is verified by the command.'),
    backup: object({
      made: orNull(instant('When the last was made')),
      hours: orNull(whole('Its age in whole hours.')),
      unsavedSince: orNull(instant('When the first entry was made that stands in no backup; null: all are saved')),
      unsavedHours: orNull(whole('Whole hours since then.')),
      atMostHours: whole('From so many hours on a backup is late.'),
      old: yesNo('It is late, or none was ever made.'),
    }),
    signedHead: object({ ...AGE, size: orNull(whole('Over how many entries.')) }),
    signsHeads: yesNo('This server signs heads.'),
  }),
  RecordVerified: object({
    at: instant('When it was verified'),
    entries: whole('Sealed entries that were read.'),
    waiting: whole('Written and not yet sealed.'),
    root: text('Root hash over what was read, hex.'),
    misfit: orNull(
      object(
        { number: orNull(whole('Its number.')), kind: text('What kind.'), sentence: text('What does not fit.') },
        'The first thing that does not fit; null when all fits.',
      ),
    ),
  }),
  Losses: object({
    losses: list(
      object({
        from: text('From when on something is missing.'),
        until: text('Until when.'),
        lost: text('What was lost, and how.'),
        madeFrom: text('Out of what it was made anew.'),
        authority: text('The authority that was told.'),
        reference: text('The reference under which it was told.'),
        statement: text('What was certified.'),
        by: text('Name.'),
        signedAt: instant('When it was signed'),
        sealedAs: orNull(whole('Its number in the record, once sealed.')),
      }),
    ),
  }),
  RecordHead: object({ size: whole('How many entries.'), root: orNull(text('Root hash, hex.')) }),
};
