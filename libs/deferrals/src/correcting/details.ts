/**
 * What of each kind of act is put right by a correction, and which of it decides something. What is not listed would
 * change an answer or an interval, and is put right by doing and signing the right thing; see `put-right-otherwise.ts`.
 * AMC M.A.305(e); published requirement E-09 on electronic records. Which of it wants a second look: 145.A.48 for what is
 * on the aircraft; for the rest common practice, no source.
 */
import type {
  Act,
  CardStepped,
  CorrectableField,
  Deferred,
  Extended,
  ProcedureSigned,
  RowChanged,
  WrittenUp,
} from '../acts.js';
import type { Basis, DocumentBasis } from '../basis.js';
import type { Privilege } from '../people.js';
import { type Detail, type DetailsOf, PART_DETAILS, partDetail, text } from './detail.js';

type OnABasis = Deferred | RowChanged;

/** Which unit failed, where a row of the MEL relieves units. */
function unit<Acted extends OnABasis>(): Detail<Acted> {
  return {
    field: 'unit',
    decides: true,
    many: ({ basis, item }) => (basis.kind === 'mel-row' ? item.units.length : 0),
    read: ({ item }, part) => item.units[part] ?? null,
    write: (act, part, now) => ({
      ...act,
      item: { ...act.item, units: act.item.units.map((one, at) => (at === part ? now : one)) },
    }),
  };
}

function ofDocument<Acted extends OnABasis>(
  field: 'reference' | 'issuedBy' | 'limit',
  decides?: { decides: true },
): Detail<Acted> {
  return {
    field,
    ...decides,
    many: ({ basis }) => (isDocument(basis) && !isNamedByWork(field, basis) ? 1 : 0),
    read: ({ basis }) => (isDocument(basis) ? basis[field] : null),
    write: (act, _, now) => ({ ...act, basis: { ...act.basis, [field]: now } }),
  };
}

function isDocument(basis: Basis): basis is DocumentBasis {
  return basis.kind !== 'mel-row';
}

/** Work is signed under the reference of its document: that one names work, and stays. */
function isNamedByWork(field: string, { procedures = [] }: DocumentBasis): boolean {
  return field === 'reference' && procedures.length > 0;
}

function ofBasis<Acted extends OnABasis>(): Detail<Acted>[] {
  return [unit(), ofDocument('reference'), ofDocument('issuedBy'), ofDocument('limit', { decides: true })];
}

/** What was fitted new in a step of a card: each of these stands under the one field, in this order. */
function renewed(
  field: 'partNumber' | 'certificate',
  keys: readonly ('partNumber' | 'batch' | 'certificate')[],
): Detail<CardStepped> {
  const keyOf = (part: number) => keys[part] ?? 'partNumber';
  return {
    field,
    many: ({ result }) => (result.kind === 'renewed' ? keys.length : 0),
    read: ({ result }, part) => (result.kind === 'renewed' ? (result[keyOf(part)] ?? null) : null),
    write: (act, part, now) => ({ ...act, result: { ...act.result, [keyOf(part)]: now } }),
  };
}

/** Why something was entered late stands for it where the aircraft left meanwhile. */
function late<Acted extends WrittenUp | ProcedureSigned>(): Detail<Acted> {
  return {
    field: 'lateReason',
    decides: true,
    many: ({ lateReason }) => (lateReason === undefined ? 0 : 1),
    read: ({ lateReason }) => lateReason ?? null,
    write: (act, _, now) => ({ ...act, lateReason: now }),
  };
}

/** What an extension was asked for with, and granted on. */
function request(field: 'reason' | 'whyNotFixed' | 'plan'): Detail<Extended> {
  return {
    field,
    decides: true,
    many: () => 1,
    read: (act) => act.request[field],
    write: (act, _, now) => ({ ...act, request: { ...act.request, [field]: now } }),
  };
}

const DETAILS: DetailsOf = {
  'written-up': [late()],
  'procedure-signed': [text('doneAt', 'doneAt', { decides: true }), late()],
  extended: [
    request('reason'),
    request('whyNotFixed'),
    request('plan'),
    {
      field: 'agreement',
      decides: true,
      many: ({ agreement }) => (agreement === null ? 0 : 1),
      read: ({ agreement }) => agreement,
      write: (act, _, now) => ({ ...act, agreement: now }),
    },
  ],
  deferred: ofBasis(),
  'row-changed': [...ofBasis<RowChanged>(), text('reason', 'reason')],
  'placard-fitted': [text('placardText', 'text', { decides: true })],
  rectification: [
    text('workDone', 'workDone'),
    text('reference', 'reference'),
    ...PART_DETAILS.map((field) => partDetail<Extract<Act, { kind: 'rectification' }>>(field)),
  ],
  transferred: [
    text('reason', 'reason'),
    ...PART_DETAILS.map((field) => partDetail<Extract<Act, { kind: 'transferred' }>>(field)),
  ],
  'card-stepped': [renewed('partNumber', ['partNumber']), renewed('certificate', ['batch', 'certificate'])],
  tested: [text('test', 'test')],
  inspected: [text('findings', 'findings')],
  restored: [text('reference', 'reference')],
  'generally-verified': [text('remarks', 'remarks')],
  released: [
    {
      field: 'staysOpen',
      decides: true,
      many: ({ staysOpen }) => staysOpen.length,
      read: ({ staysOpen }, part) => staysOpen[part] ?? null,
      write: (act, part, now) => ({
        ...act,
        staysOpen: act.staysOpen.map((one, at) => (at === part ? now : one)),
      }),
    },
  ],
  'no-fault-found': [text('checks', 'checks'), text('reference', 'reference')],
  'raised-in-error': [text('reason', 'reason')],
  'reset-and-watch': [text('reference', 'reference'), text('test', 'test'), text('watch', 'watch')],
  joined: [text('reason', 'reason')],
  'authority-granted': [
    {
      field: 'number',
      many: () => 1,
      read: ({ document }) => document.number,
      write: (act, _, now) => ({ ...act, document: { ...act.document, number: now } }),
    },
    {
      field: 'authority',
      many: () => 1,
      read: ({ document }) => document.authority,
      write: (act, _, now) => ({ ...act, document: { ...act.document, authority: now } }),
    },
  ],
};

/** The privilege that the act itself asks of its signer, and so does a correction of it. */
const PRIVILEGES: Partial<Record<Act['kind'], Privilege>> = {
  deferred: 'defer',
  'row-changed': 'defer',
  'procedure-signed': 'sign-procedure',
  extended: 'extend',
  'placard-fitted': 'sign-procedure',
  rectification: 'sign-procedure',
  transferred: 'sign-procedure',
  'card-stepped': 'sign-procedure',
  tested: 'sign-procedure',
  inspected: 'inspect',
  restored: 'sign-procedure',
  'generally-verified': 'sign-procedure',
  released: 'release',
  'no-fault-found': 'release',
  'raised-in-error': 'release',
  'reset-and-watch': 'release',
  joined: 'defer',
  'authority-granted': 'defer',
};

export function privilegeToCorrect(act: Act | undefined): Privilege {
  return (act && PRIVILEGES[act.kind]) ?? 'write-up';
}

export function detailsOf(act: Act): readonly Detail[] {
  // Each list stands under its own kind, which the compiler cannot carry through the look-up.
  return (DETAILS[act.kind] ?? []) as readonly Detail[];
}

export function detailOf(act: Act, field: CorrectableField): Detail | undefined {
  return detailsOf(act).find((one) => one.field === field);
}
