import type { ReminderAddressRow, Tx } from '#store';
import type { Session } from '../../http/session.js';
import { isWaitedFor } from './mailbox-code.js';

/** Who may enter and turn off what is not their own. */
const FOR_ALL = ['engineer', 'maintenance-control', 'quality', 'administrator'] as const;

export function mayEnterForAll({ roles }: Session): boolean {
  return FOR_ALL.some((role) => roles.includes(role));
}

export function mayEnd({ personId, forAll }: ReminderAddressRow, session: Session): boolean {
  if (personId === session.personId || session.roles.includes('administrator')) return true;
  return forAll && mayEnterForAll(session);
}

/** Never with a secret. */
export async function addressLines(tx: Tx, session: Session, rows: readonly ReminderAddressRow[], now: string) {
  const people = await tx.people.known([...new Set(rows.map(({ personId }) => personId))]);
  const marks = new Map((await tx.aircraft.list()).map((one) => [one.id, one.registration]));
  return rows.map((row) => ({
    id: row.id,
    kind: row.kind,
    address: row.address,
    label: row.label,
    of: people.get(row.personId)?.name ?? '(name erased)',
    mine: row.personId === session.personId,
    forAll: row.forAll,
    mayEnd: row.endedAt === null && mayEnd(row, session),
    aircraft: row.aircraftId,
    registration: row.aircraftId === null ? null : (marks.get(row.aircraftId) ?? null),
    createdAt: row.createdAt,
    confirmedAt: row.confirmedAt,
    waitsForCode: isWaitedFor(row, now),
    codeSentAt: row.codeSentAt,
    codeProblem: row.codeProblem,
    endedAt: row.endedAt,
    endedBecause: row.endedBecause,
    twoSecretsUntil: row.formerUntil !== null && now < row.formerUntil ? row.formerUntil : null,
  }));
}
