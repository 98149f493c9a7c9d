/** What a page is shown of a defect: lines made from its life, in words. */
import {
  type Act,
  type Actor,
  basisInWords,
  type CardWork,
  type DefectLife,
  isSignature,
  onItsFlight,
  ownerInWords,
  performersOf,
  placardsFitted,
  proceduresBrought,
  proceduresOwed,
  rowsBroughtBy,
  type Signature,
  standing,
  stoppedHalfWorked,
  stoppedInWords,
} from '#deferrals';
import type { CountingSettings, MelStops, ProjectedEnd, Sourced, Used, WhatIsLeft } from '#intervals';
import type { BroughtRow, Mel, Procedure, Repeat } from '#mel';
import type { AircraftRow, DefectRow, LeftItemRow } from '#store';
import { allCorrections, waitingLines } from '../correcting/correction-lines.js';
import { ownerOfRow } from '../register/owner-of-row.js';
import { signerOfAct } from '../people/kept-signature.js';
import { baseTime } from '../record/base-time.js';
import { firstWords } from './short-text.js';
import { wordsOfAct } from './words-of-act.js';

export interface DefectContext {
  aircraft: AircraftRow;
  mel: Mel | null;
  at: string;
  used: Used | null;
  base: string;
  melStops: Sourced<MelStops>;
  counting?: Partial<CountingSettings>;
  /** Where what is counted is expected to end; null where nothing is, or nothing can be said. */
  projected?: ProjectedEnd | null;
}

export function defectNumber(aircraft: Pick<AircraftRow, 'registration'>, row: Pick<DefectRow, 'number'>): string {
  return `${aircraft.registration}/${row.number}`;
}

export function defectLine(row: DefectRow, life: DefectLife, context: DefectContext) {
  const { aircraft, mel, at, used, counting, melStops } = context;
  const basis = life.deferral?.basis ?? null;
  const since = Date.parse(at) < Date.parse(life.recordedAt) ? life.enteredAt : at;
  const stands = standing(life, since, used ?? {}, counting);
  const entry = life.item?.entry ?? null;
  return {
    id: row.id,
    number: defectNumber(aircraft, row),
    aircraft: aircraft.id,
    registration: aircraft.registration,
    description: life.description,
    origin: life.origin,
    sheet: life.sheet,
    system: life.system,
    faultMessage: life.faultMessage,
    whenFound: life.whenFound,
    onItsFlight: onItsFlightLine(life, melStops),
    entry,
    title: (entry === null ? undefined : mel?.entry(entry)?.title) ?? firstWords(life.description, 60),
    units: life.item?.units ?? [],
    oneOf: (life.item?.units.length ?? 0) > 1,
    basis: basis === null ? null : basisInWords(basis),
    row: basis?.kind === 'mel-row' ? basis.row : null,
    state: stands.state,
    recordedAt: life.recordedAt,
    enteredAt: life.enteredAt,
    deadline:
      stands.deadline === null
        ? null
        : {
            lastDay: stands.deadline.lastDay,
            endsAt: stands.deadline.endsAt,
            base: stands.deadline.base ?? context.base,
            tzdb: stands.deadline.tzdb ?? '',
            words: stands.left.map(({ sentence }) => sentence).join(' ') || 'The basis sets no interval.',
            over: stands.overdue === true,
            counted: stands.deadline.endsAt === null && stands.left.length > 0,
            parts: stands.left.flatMap(({ limits }) => limits).map(partLine),
            projected: context.projected ?? null,
          },
    work: basis === null ? [] : proceduresOwed(basis).map(({ work, procedure }) => workLine(work, procedure, life)),
    placard:
      basis?.placard === undefined
        ? null
        : { ...basis.placard, fitted: placardsFitted(life).includes(basis.placard.text) },
    brought: basis === null ? [] : rowsBroughtBy(basis).map((one) => broughtLine(one, life)),
    deferredBy: life.deferral === null ? null : signerOf(life.deferral.signedBy),
    corrected: allCorrections(life, context.base),
    waits: waitingLines(life, context.base).map(({ field }) => field),
    version: row.version,
  };
}

/** What holds for the flight on which it was found; null while nobody has said when that was. */
function onItsFlightLine({ whenFound }: DefectLife, melStops: Sourced<MelStops>) {
  const holds = onItsFlight(whenFound, melStops);
  return holds && { ...holds, caution: "The commander and the operator's approved MEL and procedures prevail." };
}

/** One limit in its own unit; hours are given in minutes. */
function partLine({ limit, countedIn, used, left, endsAt, isOver, text }: WhatIsLeft['limits'][number]) {
  return { unit: limit.unit, countedIn, used, left, endsAt, over: isOver, text };
}

export type DefectLine = ReturnType<typeof defectLine>;

/** What any reader sees of who signed, on every page and print (published requirement E-06). */
export function signerOf({ name, role, licence, authorisation, organisation, signedAt, method }: Signature) {
  const { name: of, approval } = organisation;
  return {
    by: name,
    role,
    licence,
    authorisation: authorisation.number,
    organisation: `${of} (${approval})`,
    signedAt,
    method,
  };
}

function broughtLine(brought: BroughtRow, life: DefectLife) {
  const { entry, title, row, placard } = brought;
  return {
    entry,
    title,
    row,
    work: proceduresBrought(brought).map(({ work, procedure }) => workLine(work, procedure, life)),
    placard: placard === undefined ? null : { ...placard, fitted: placardsFitted(life).includes(placard.text) },
  };
}

function workLine(work: string, procedure: Procedure, life: DefectLife) {
  const signed = life.procedures.findLast((done) => done.work === work);
  return {
    work,
    kind: procedure.kind,
    text: procedure.text,
    reference: procedure.reference ?? null,
    minutes: procedure.minutes ?? null,
    repeat: repeatInWords(procedure.repeat),
    eachDeparture: procedure.repeat === 'each-departure',
    by: procedure.by ?? (procedure.kind === 'M' ? 'technician' : 'commander'),
    cautions: [...(procedure.cautions ?? [])],
    card: procedure.card ?? null,
    leaves: (procedure.leaves ?? []).map(({ kind, where, undo }) => ({ kind, where, undo })),
    signed: signed ? { ...signerOf(signed.by), doneAt: signed.doneAt } : null,
  };
}

function repeatInWords(repeat: Repeat | undefined): string {
  if (repeat === undefined || repeat === 'once') return 'once';
  if (repeat === 'each-departure') return 'before each departure';
  if (repeat === 'each-flight-day') return 'once each flight-day';
  if ('every' in repeat) return `every ${repeat.every}`;
  return `after the first flight, then every ${repeat.afterFirstFlightThenEvery}`;
}

export function leftLine(item: LeftItemRow, aircraft: AircraftRow, defects: readonly DefectRow[]) {
  const owner = defects.find(({ id }) => id === item.defectId);
  return {
    id: item.id,
    defect: item.defectId,
    defectNumber: owner ? defectNumber(aircraft, owner) : null,
    kind: item.kind,
    where: item.place,
    tag: item.tag ?? '',
    undo: item.undo,
    owner: owner ? defectNumber(aircraft, owner) : ownerInWords(ownerOfRow(item)),
  };
}

/** Work begun and not yet released: what was asked for, and what was seen since the last piece of work. */
export function openWorkView(life: DefectLife) {
  const { work, altered } = life;
  if (work === null) return null;
  return {
    complete: work.done.at(-1)?.complete === true,
    testAsked: work.done.some(({ testAsked }) => testAsked),
    tested: work.tested?.result ?? null,
    inspectionAsked: work.done.some(({ inspectionAsked }) => inspectionAsked),
    inspected: work.inspected !== null,
    restorationOwed: altered,
    restored: work.restored !== null,
    verified: work.verified !== null,
    performers: performersOf(life).map(({ name }) => name),
    stopped: stoppedHalfWorked(life).map(halfWorked),
  };
}

const halfWorked = (work: CardWork): string =>
  stoppedInWords(work, work.ended?.kind === 'card-stopped' ? work.ended.reason : '');

/** The arithmetic of each deadline, step by step; null without a clock. */
export function arithmeticOf({ limits }: DefectLife): string | null {
  return limits.flatMap(({ clock }) => (clock ? [clock.explanation] : [])).join(' ') || null;
}

/** @param history all acts, this one among them. @param sealed numbers in the record by act id */
export function historyLine(
  act: Act,
  history: readonly Act[],
  sealed: ReadonlyMap<string, number | null>,
  base: string,
) {
  const by = signerOfAct<Actor | Signature>(act);
  const signed = isSignature(by) ? by : null;
  return {
    seq: history.indexOf(act) + 1,
    act: act.kind,
    words: wordsOfAct(act, history, base),
    by: by.name,
    licence: signed?.licence ?? null,
    authorisation: signed?.authorisation.number ?? null,
    organisation: `${by.organisation.name} (${by.organisation.approval})`,
    role: by.role,
    statement: signed?.statement ?? null,
    signedAt: signed?.signedAt ?? null,
    method: signed?.method ?? null,
    occurredAt: act.occurredAt ?? null,
    recordedAt: act.recordedAt,
    enteredAt: act.enteredAt,
    enteredAtBase: baseTime(act.enteredAt, base),
    sealedAs: sealed.get(act.id) ?? null,
    details: act,
  };
}
