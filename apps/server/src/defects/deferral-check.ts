import { Injectable } from '@nestjs/common';
import {
  basisInWords,
  type BasisAsked,
  type DefectLife,
  type FailedItem,
  type RowOffered,
  type StatedBy,
} from '#deferrals';
import type { ConditionAnswer, ItemAnswer, Verdict } from '#dispatch';
import { rowsBrought } from '#mel';
import type { AircraftRow } from '#store';
import { DispatchService } from '../dispatch/dispatch.service.js';
import { Problem } from '../http/problem.js';
import { MelShelf, type ShelvedMel } from '../mel/mel-shelf.js';
import type { Scene } from './acting.js';
import type { DeferBody, ItemBody, StatedStartBody } from './bodies.js';
import { startWords } from './stated-start-words.js';

/** What must be true of the aircraft, whatever it flies, before a deferral may be signed. */
@Injectable()
export class DeferralCheck {
  constructor(
    private readonly dispatch: DispatchService,
    private readonly shelf: MelShelf,
  ) {}

  /** The failed item in the terms of the MEL of this aircraft; refused when the MEL has no such item for it. */
  itemOf(
    shelved: ShelvedMel | null,
    aircraft: AircraftRow,
    { entry, units }: ItemBody,
  ): { item: FailedItem; installed: readonly string[] } {
    const found = shelved?.mel.matchSubEntry(entry, aircraft);
    if (found?.kind === 'one') {
      return { item: { entry, subEntry: found.subEntry.id, units: [...units] }, installed: found.subEntry.units };
    }
    const known = shelved?.mel.entry(entry) !== undefined;
    const reason = !known
      ? `the MEL has no entry ${entry}`
      : found?.kind === 'unknown'
        ? `which configuration of entry ${entry} applies to ${aircraft.registration} is not known`
        : `entry ${entry} is not for the configuration of ${aircraft.registration}`;
    throw new Problem('invalid-input', reason, { errors: [{ pointer: '/item/entry', reason }] });
  }

  /** The row asked for, as the revision in force offers it to this aircraft; null for another basis. */
  async offered(
    { tx, aircraft }: Pick<Scene, 'tx' | 'aircraft'>,
    life: DefectLife,
    body: Pick<DeferBody, 'row'>,
  ): Promise<RowOffered | null> {
    if (body.row === undefined) return null;
    const shelved = await this.shelf.inForce(tx, aircraft.type);
    const number = life.item?.entry ?? null;
    const entry = number === null ? undefined : shelved?.mel.entry(number);
    const found = number === null ? undefined : shelved?.mel.row(number, body.row, aircraft);
    if (!shelved || !entry || !found) return null;
    const { document, revision } = shelved.revision;
    return { document, revision, entry, ...found, brings: rowsBrought(shelved.mel, found.row, aircraft) };
  }

  /** Throws Problem `row-not-available` naming each condition that fails with this row and not without it. */
  async mayStandBesideOthers(scene: Scene, life: DefectLife, body: Pick<DeferBody, 'row'>): Promise<void> {
    const ours = await this.failsBesideOthers({ ...scene, at: scene.context.now }, life, body);
    if (ours.length === 0) return;
    throw new Problem('row-not-available', ours.join(' '), {
      errors: ours.map((reason) => ({ pointer: '/row', reason })),
    });
  }

  /**
   * Judged together with everything else that is open and without any flight: what fails then fails on every flight. Work
   * that can be done later does not count against it.
   */
  async failsBesideOthers(
    { tx, aircraft, settings, opened, at }: BesideOthers,
    life: DefectLife,
    body: Pick<DeferBody, 'row'>,
  ): Promise<string[]> {
    const { entry, units } = life.item ?? { entry: null, units: [] };
    if (body.row === undefined || entry === null) return [];
    const proposal = { defect: life.defect, entry, units, row: body.row };
    const tried = await this.dispatch.judgeNow(tx, aircraft, null, settings, { at, proposals: [proposal], opened });
    const failing = failingOf(tried);
    if (failing.size === 0) return [];
    const before = failingOf(await this.dispatch.judgeNow(tx, aircraft, null, settings, { at, opened }));
    return [...failing].filter(([key]) => !before.has(key)).map(([, reason]) => reason);
  }
}

/** The aircraft with what is open on it, and the instant that is asked about. */
export type BesideOthers = Pick<Scene, 'tx' | 'aircraft' | 'settings' | 'opened'> & { at: string };

function failingOf(verdict: Verdict): Map<string, string> {
  const failing = verdict.items.flatMap((item) =>
    item.conditions
      .filter(({ after }) => after === 'F')
      .map((condition) => [keyOf(item, condition), reasonOf(item, condition)] as const),
  );
  return new Map(failing);
}

function keyOf(item: ItemAnswer, condition: ConditionAnswer): string {
  return [item.entry, item.unit, item.row, condition.kind, condition.id].join('|');
}

function reasonOf(item: ItemAnswer, condition: ConditionAnswer): string {
  return `${item.entry} ${item.title}, unit ${item.unit}, row ${item.row ?? '-'}: ${condition.because}`;
}

export function basisAsked(body: Pick<DeferBody, 'row' | 'document' | 'start'>): BasisAsked | null {
  const stated = body.start === undefined ? {} : { stated: statedBy(body.start) };
  if (body.row !== undefined) return { kind: 'mel-row', row: body.row, ...stated };
  if (!body.document) return null;
  const { kind, reference, issuedBy, limit, interval, startsAt, until } = body.document;
  return {
    kind,
    reference,
    issuedBy,
    limit,
    conditions: [],
    ...(interval === undefined ? {} : { interval }),
    ...(startsAt === undefined ? {} : { startsAt }),
    ...(until === undefined ? {} : { until }),
    ...stated,
  };
}

function statedBy({ at, counter, reading, readAt, document }: StatedStartBody): StatedBy {
  const onCounter = [counter, reading, readAt].filter((one) => one !== undefined).length;
  if (at !== undefined && onCounter === 0) return { start: { at }, document };
  if (at === undefined && counter !== undefined && reading !== undefined && readAt !== undefined) {
    return { start: { counter, reading, readAt }, document };
  }
  const reason = 'a start is an instant, or a counter with what it read and when';
  throw new Problem('invalid-input', reason, { errors: [{ pointer: '/start', reason }] });
}

/** Basis and stated start as the statement names them. */
export function statedBasis(body: DeferBody, life: DefectLife): { basis: string; start?: string } {
  const basis = basisWords(body, life);
  return body.start === undefined ? { basis } : { basis, start: startWords(body.start) };
}

/** The basis as the statement names it, before it is found. */
export function basisWords(body: Pick<DeferBody, 'row' | 'document' | 'item'>, life: DefectLife): string {
  const asked = basisAsked(body);
  if (asked === null) return 'no document';
  if (asked.kind !== 'mel-row') return basisInWords(asked);
  return `MEL ${body.item?.entry ?? life.item?.entry ?? 'entry not named'} row ${asked.row}`;
}
