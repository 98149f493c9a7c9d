/** Extensions as the register and the pages show them. */
import type { AircraftRow, DefectRow, ExtensionRow, Tx } from '#store';
import { firstWords } from '../defects/short-text.js';
import { defectNumber } from '../defects/views.js';
import { noticeState } from './notice-state.js';

const STATE_WORDS: Record<ExtensionRow['state'], string> = {
  asked: 'asked for',
  granted: 'granted',
  declined: 'declined',
  withdrawn: 'withdrawn',
  replaced: 'replaced by a later request',
};

export interface LineContext {
  now: string;
  base: string;
}

/** Lines in the order of the rows, with names and numbers looked up once. */
export async function extensionLines(tx: Tx, rows: readonly ExtensionRow[], context: LineContext) {
  const defects = new Map(
    (await tx.defects.getAll(rows.map(({ defectId }) => defectId))).map((row) => [row.id, row]),
  );
  const aircraft = new Map((await tx.aircraft.list()).map((row) => [row.id, row]));
  const people = rows.flatMap(({ askedBy, decidedBy, sentBy, acknowledgedBy }) =>
    [askedBy, decidedBy, sentBy, acknowledgedBy].flatMap((id) => id ?? []),
  );
  const known = await tx.people.known([...new Set(people)]);
  const nameOf = (id: string | null) => (id === null ? '' : (known.get(id)?.name ?? '(name erased)'));
  return rows.flatMap((row) => {
    const defect = defects.get(row.defectId);
    const of = defect ? aircraft.get(defect.aircraftId) : undefined;
    return defect && of ? [lineOf(row, defect, of, nameOf, context)] : [];
  });
}

function lineOf(
  row: ExtensionRow,
  defect: DefectRow,
  aircraft: AircraftRow,
  nameOf: (id: string | null) => string,
  { now, base }: LineContext,
) {
  const { reason, whyNotFixed, plan, parts, days, agreement } = row;
  return {
    id: row.id,
    defect: defect.id,
    number: defectNumber(aircraft, defect),
    aircraft: aircraft.id,
    registration: aircraft.registration,
    entry: defect.entry,
    title: firstWords(defect.description, 60),
    state: row.state,
    words: stateWords(row, defect, now),
    base,
    asked: { by: nameOf(row.askedBy), at: row.askedAt, reason, whyNotFixed, plan, parts, days, agreement },
    decided:
      row.decidedAt === null ? null : { by: nameOf(row.decidedBy), at: row.decidedAt, because: row.decidedBecause },
    lastDayBefore: row.lastDayBefore,
    lastDay: row.lastDay,
    endsBefore: row.endsBefore,
    endsAt: row.endsAt,
    notice: row.state === 'granted' ? noticeLine(row, nameOf, now, base) : null,
    version: row.version,
  };
}

export type ExtensionLine = ReturnType<typeof lineOf>;

/** A request that nobody decided while the interval ran can no longer be granted. */
function stateWords({ state }: ExtensionRow, { endsAt }: DefectRow, now: string): string {
  if (state === 'asked' && endsAt !== null && Date.parse(endsAt) <= Date.parse(now)) {
    return 'asked for, and not granted before the interval ended';
  }
  return STATE_WORDS[state];
}

function noticeLine(row: ExtensionRow, nameOf: (id: string | null) => string, now: string, base: string) {
  const { sentAt, sentReference, acknowledgedAt, acknowledgedReference } = row;
  return {
    ...noticeState(row, now, base),
    dueAt: row.noticeDueAt,
    address: `/api/extensions/${row.id}/notice`,
    sent: sentAt === null ? null : { by: nameOf(row.sentBy), at: sentAt, reference: sentReference ?? '' },
    acknowledged:
      acknowledgedAt === null
        ? null
        : { by: nameOf(row.acknowledgedBy), at: acknowledgedAt, reference: acknowledgedReference ?? '' },
  };
}
