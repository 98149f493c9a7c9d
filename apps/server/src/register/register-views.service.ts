import { Inject, Injectable } from '@nestjs/common';
import type { ShiftGiven, ShiftTaken } from '#deferrals';
import type { AircraftRow, LeftItemRow, Tx } from '#store';
import { livesOf, type OpenedDefect } from '../defects/defect-book.js';
import { defectNumber } from '../defects/views.js';
import { aircraftOr404 } from '../dispatch/dispatch.service.js';
import { readableGates } from '../dispatch/readable-gates.js';
import { CLOCK, type Clock } from '../http/tokens.js';
import { itemOfRow } from './left-elsewhere.js';
import { ownerOfRow } from './owner-of-row.js';
import { registerLifeOf } from './register-book.js';
import { ownerWords, shiftListOf } from './shift-list.js';
import { statementOnRegister } from './statement-on-register.js';
import type { RegisterStatementQuery } from './statements.js';

const UNDONE_SHOWN = 20;

/** The register of an aircraft as pages, the interface and the command show it. */
@Injectable()
export class RegisterViews {
  constructor(@Inject(CLOCK) private readonly now: Clock) {}

  async view(tx: Tx, aircraftId: string) {
    const aircraft = await aircraftOr404(tx, aircraftId);
    return registerView(tx, aircraft, this.now());
  }

  async statement(tx: Tx, aircraftId: string, { act, asked }: RegisterStatementQuery) {
    const aircraft = await aircraftOr404(tx, aircraftId);
    const opened = await livesOf(tx, await tx.defects.open(aircraft.id));
    const life = await registerLifeOf(tx, aircraft);
    return { act, statement: await statementOnRegister({ tx, row: aircraft, life, opened }, act, asked) };
  }
}

export async function registerView(tx: Tx, aircraft: AircraftRow, at: string) {
  const opened = await livesOf(tx, await tx.defects.open(aircraft.id));
  const life = await registerLifeOf(tx, aircraft);
  const rows = await tx.register.ofAircraft(aircraft.id, { removed: true });
  const people = await tx.people.known([
    ...new Set(rows.flatMap((row) => [row.fittedBy, row.removedBy, row.verifiedBy].filter((one) => one !== null))),
  ]);
  const name = (id: string | null): string | null => (id === null ? null : (people.get(id)?.name ?? '(name erased)'));
  const left = rows.filter(({ removedAt }) => removedAt === null);
  const { orphans, openWork } = readableGates(aircraft, opened, left, [], at);
  const line = (row: LeftItemRow) => registerLine(row, aircraft, opened, name);
  const undone = rows.filter(({ removedAt }) => removedAt !== null);
  const list = await shiftListOf(tx, aircraft, opened);
  return {
    at,
    aircraft: aircraft.id,
    registration: aircraft.registration,
    version: aircraft.version,
    left: left.map(line),
    orphans,
    openWork,
    open: list.open,
    undone: undone
      .toSorted((one, other) => (other.removedAt ?? '').localeCompare(one.removedAt ?? ''))
      .slice(0, UNDONE_SHOWN)
      .map(line),
    corrections: thingsAsked([...life.asked, ...opened.flatMap((one) => one.life.asked)]).map((asked) => ({
      id: asked.id,
      item: asked.item ?? '',
      field: asked.field,
      was: asked.was ?? '',
      now: asked.now,
      reason: asked.reason,
      by: asked.by.name,
      askedBy: asked.by.person,
    })),
    offered: life.offered === null ? null : givenLine(life.offered),
    lastTaken: life.lastTaken === null ? null : takenLine(life.lastTaken),
  };
}

/** Other corrections wait on the page of their item. */
function thingsAsked<Asked extends { item: string | null }>(asked: readonly Asked[]): Asked[] {
  return asked.filter(({ item }) => item !== null);
}

function registerLine(
  row: LeftItemRow,
  aircraft: AircraftRow,
  opened: readonly OpenedDefect[],
  name: (id: string | null) => string | null,
) {
  const owner = ownerOfRow(row);
  const holders = opened.filter(({ life }) => life.left.some(({ id }) => id === row.id));
  const { id, kind, where, tag, undo } = itemOfRow(row);
  return {
    id,
    kind,
    where,
    tag,
    undo,
    owner: ownerWords(owner, aircraft, opened),
    ownerKind: owner?.kind ?? null,
    ownerUntil: row.ownerUntil,
    defect: row.defectId,
    alsoFor: holders
      .filter((one) => one.row.id !== row.defectId)
      .map((one) => ({ defect: one.row.id, number: defectNumber(aircraft, one.row) })),
    under: row.under,
    fittedBy: name(row.fittedBy) ?? '',
    fittedAt: row.fittedAt,
    removedBy: name(row.removedBy),
    removedAt: row.removedAt,
    verifiedBy: name(row.verifiedBy),
    verifiedAt: row.verifiedAt,
  };
}

function givenLine({ id, by, to, note, enteredAt, left, open }: ShiftGiven) {
  return {
    id,
    by: by.name,
    to,
    note,
    at: enteredAt,
    left: left.map(({ words, owner }) => `${words}, for ${owner}`),
    open,
  };
}

function takenLine({ given, taken }: { given: ShiftGiven; taken: ShiftTaken }) {
  return { ...givenLine(given), takenBy: taken.by.name, takenAt: taken.enteredAt, remarks: taken.remarks };
}
