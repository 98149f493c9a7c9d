import {
  anything,
  instant,
  list,
  object,
  oneOf,
  orNull,
  ref,
  type Shape,
  text,
  whole,
  yesNo,
} from '../openapi/shape.js';

const signatureView = object({
  id: text('id'),
  by: text('Name of the signer.'),
  role: text('Role in which it was signed.'),
  licence: orNull(text('Licence or certificate number.')),
  authorisation: orNull(text('Authorisation number; none where a role suffices.')),
  organisation: orNull(text('Organisation with its approval number.')),
  statement: text('What was certified, word for word.'),
  signedAt: instant('When'),
  signedAtBase: instant('The same as a clock at the base reads it, with its offset'),
  method: oneOf(['password', 'passkey', 'single-sign-on', 'paper'], 'The form of the signature.'),
  evidence: text('The sign-in or sheet that it leads back to.'),
  what: text('What was done.'),
  registration: orNull(text('Mark of the aircraft.')),
  entry: text('Id of the record entry it was given with.'),
  sealedAs: orNull(whole('Number of that entry, once sealed.')),
  contentSha256: text('The leaf of that entry: what the signature is bound to.'),
  verifies: yesNo('Everything fits the bytes of the entry.'),
  misfits: list(text('What does not fit.')),
});

const member = object({
  id: text('id'),
  name: text('Name.'),
  licence: orNull(text('Licence or certificate number.')),
  roles: list(text('role')),
  organisation: orNull(text('The organisation that the person comes from.')),
  validFrom: instant('Works here from'),
  validUntil: orNull(instant('Works here until before')),
  works: yesNo('Works here now.'),
  lockedAt: orNull(instant('Access is locked since')),
  authorisations: list(
    object({
      id: text('id'),
      number: text('Number.'),
      organisation: text('Who gave it, with its approval number.'),
      aircraftTypes: list(text('type')),
      licenceCategories: list(text('category')),
      privileges: list(text('What it lets its holder do.')),
      validFrom: instant('Valid from'),
      validUntil: orNull(instant('Valid until before')),
      revokedAt: orNull(instant('Revoked at')),
      oneOff: orNull(object({ defect: text('Id of the defect it is for.'), because: text('Why.') })),
    }),
  ),
});

export const PEOPLE_SHAPES: Record<string, Shape> = {
  PasskeyAsked: object({
    challenge: text('Id of the challenge.'),
    options: anything('What the browser is asked for.'),
  }),
  Passkeys: object({
    statement: text('What is certified when one is added.'),
    passkeys: list(
      object({
        id: text('id'),
        label: text('What its owner calls it.'),
        createdAt: instant('Added'),
        lastUsedAt: orNull(instant('Last used')),
      }),
    ),
  }),
  SignOn: object({
    name: orNull(text('What it is called; null where there is none.')),
    statement: text('What is certified when an account is linked.'),
  }),
  SignOnBegun: object({ address: text('Where the browser goes.') }),
  MemberView: member,
  Members: object({
    at: instant('When this was read'),
    people: list(ref('MemberView')),
    organisations: list(object({ id: text('id'), name: text('Name.'), approval: text('Approval number.') })),
    aircraftTypes: list(text('type'), 'The types of this operator.'),
  }),
  AccountMade: object({
    person: ref('MemberView'),
    firstSecret: orNull(text('Told with the first answer alone; null when the request is sent again.')),
    firstUntil: orNull(instant('Until when it serves')),
  }),
  InvitationLine: object({
    id: text('id'),
    roles: list(text('role')),
    untilAt: instant('Until when it may be taken up'),
    notUsable: orNull(text('Why it lets nobody in: "whoever made it is locked"; null where it may be taken up.')),
  }),
  Invitations: object({ invitations: list(ref('InvitationLine')) }),
  InvitationMade: object({
    invitation: ref('InvitationLine'),
    code: orNull(text('Told with the first answer alone; null when the request is sent again.')),
  }),
  InvitationWithdrawn: object({ invitation: ref('InvitationLine') }),
  InvitationSeen: object({
    operator: text('Name of the operator that invites.'),
    roles: list(text('role')),
    untilAt: instant('Until when it may be taken up'),
    statement: text('What is signed by taking it up.'),
  }),
  InvitationTaken: object({ operator: text('Name of the operator.') }),
  MemberChanged: object({ person: ref('MemberView') }),
  PersonErased: object({
    person: ref('MemberView'),
    list: object({
      written: yesNo('The list of erasures outside the database has it.'),
      says: text('What that means for backups.'),
    }),
    written: ref('WrittenNames'),
  }),
  WrittenNames: object(
    {
      places: list(
        object({
          name: text('Number of the item, mark of the aircraft, or what it is.'),
          page: text('The page that shows it.'),
          texts: whole('How many texts there hold the name.'),
        }),
      ),
      more: yesNo('There may be more: the search stopped.'),
      words: list(text('What was looked for, as whole words; told once, and not where an answer is given again.')),
      says: text('What can be done about it.'),
    },
    'Where name, sign-in name, licence number or mailbox of somebody stands in what people wrote.',
  ),
  SignatureView: signatureView,
  Signatures: object({ at: instant('When this was read'), signatures: list(ref('SignatureView')) }),
  SessionView: object({
    at: instant('The time on the server'),
    person: object({ id: text('id'), name: text('Name.') }),
    failedAttempts: whole(
      'How often somebody tried in vain to prove the secret of this person, since that was last seen.',
    ),
    means: object(
      {
        first: yesNo('The secret is a first one still: an own one has to be chosen.'),
        secret: yesNo('With the secret.'),
        passkey: yesNo('With a passkey.'),
        signOn: orNull(text('By a fresh sign-on: what it is called.')),
      },
      'By which means this person may sign.',
    ),
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
        newerZoneData: orNull(
          text(
            'Version of the time-zone data that deadlines are stored with, where this server has older: then it signs no new one.',
          ),
        ),
      }),
    ),
    roles: list(text('role'), 'Roles for the chosen operator.'),
  }),
};
