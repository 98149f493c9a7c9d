import { Inject, Injectable } from '@nestjs/common';
import { type DefectLife, needZoneData } from '#deferrals';
import { type Leg, presetOf } from '#intervals';
import type { AircraftRow, DefectRow, Tx } from '#store';
import { documentLine } from '../deferrals/document-lines.js';
import { extensionWords } from '../deferrals/extension-words.js';
import { DispatchService } from '../dispatch/dispatch.service.js';
import { countedFrom, usedOf } from '../dispatch/flown.js';
import { Problem } from '../http/problem.js';
import { CLOCK, type Clock } from '../http/tokens.js';
import { MelShelf } from '../mel/mel-shelf.js';
import { flownLegs } from '../movements/flown-legs.js';
import { concurrencesOf } from './concurrences.js';
import { livesOf, type OpenedDefect } from './defect-book.js';
import { CorrectionAsked } from '../correcting/correction-asked.js';
import { correctableLines, correctionsOf, otherwiseLines, waitingLines } from '../correcting/correction-lines.js';
import { basisWords } from './deferral-check.js';
import { startAsked } from './stated-start-words.js';
import type { OperatorSettings } from '../people/operator-settings.js';
import { FLIGHTS_AHEAD, legsFrom, projectionOf } from './projection.js';
import { readably } from './readable-refusal.js';
import { secondInWords } from './second-in-words.js';
import { repeatLines, repeatsOfFleet } from './repeats.js';
import { type StatementFacts, type StatementQuery, statementOf } from './statements.js';
import {
  arithmeticOf,
  type DefectLine,
  defectLine,
  defectNumber,
  historyLine,
  leftLine,
  openWorkView,
  signerOf,
} from './views.js';

const SETS_A_DEADLINE: readonly StatementQuery['act'][] = ['defer', 'change-row'];

/** Reads defects for the pages. */
@Injectable()
export class DefectViews {
  constructor(
    @Inject(CLOCK) private readonly now: Clock,
    private readonly dispatch: DispatchService,
    private readonly shelf: MelShelf,
    private readonly corrections: CorrectionAsked,
  ) {}

  /** Open defects of the fleet or of one aircraft, those that end first at the top. */
  async open(tx: Tx, aircraft: readonly AircraftRow[]): Promise<DefectLine[]> {
    const lines: DefectLine[] = [];
    for (const one of aircraft) lines.push(...(await this.ofAircraft(tx, one)));
    return lines.toSorted((one, other) => endOf(one).localeCompare(endOf(other)));
  }

  async ofAircraft(tx: Tx, aircraft: AircraftRow): Promise<DefectLine[]> {
    return this.lines(tx, aircraft, await tx.defects.open(aircraft.id));
  }

  async view(tx: Tx, id: string) {
    const { row, aircraft } = await this.found(tx, id);
    const [line] = await this.lines(tx, aircraft, [row]);
    const [opened] = await livesOf(tx, [row]);
    if (!line || !opened) throw new Error(`Defect ${id} has no life.`);
    const left = (await tx.register.ofAircraft(aircraft.id)).filter(({ defectId }) => defectId === id);
    const sealed = await sealedNumbers(tx, id);
    const settings = await this.dispatch.settings(tx);
    const { base } = settings.deferral;
    return {
      version: row.version,
      body: {
        at: this.now(),
        defect: line,
        arithmetic: arithmeticOf(opened.life),
        openWork: openWorkView(opened.life),
        documents: opened.life.grants.map(documentLine),
        repeats: await repeatLines(tx, aircraft, opened.life, settings, this.now()),
        concurrence: await concurrenceView(tx, row, settings),
        causesGone: await causesGone(tx, aircraft, row, opened.life),
        left: left.map((item) => leftLine(item, aircraft, [row])),
        waiting: waitingLines(opened.life, base),
        history: opened.life.acts.map((act, _, acts) => ({
          ...historyLine(act, acts, sealed, base),
          id: act.id,
          corrections: correctionsOf(opened.life, act, base),
          correctable: correctableLines(opened.life, act),
          otherwise: otherwiseLines(act),
        })),
      },
    };
  }

  /** Of every open item: what repeated work is owed next, and what was missed. */
  async repeats(tx: Tx): Promise<object[]> {
    const settings = await this.dispatch.settings(tx);
    const opened = [];
    for (const aircraft of await tx.aircraft.list()) {
      for (const one of await livesOf(tx, await tx.defects.open(aircraft.id))) opened.push({ aircraft, one });
    }
    return repeatsOfFleet(tx, opened, settings, this.now());
  }

  async statement(tx: Tx, id: string, query: StatementQuery, reader: string) {
    const { row, aircraft } = await this.found(tx, id);
    const [opened] = await livesOf(tx, [row]);
    if (!opened) throw new Error(`Defect ${id} has no life.`);
    const settings = await this.dispatch.settings(tx);
    const { act, entry, row: melRow, document, work, step, staysOpen, unforeseen } = query;
    // Said before anybody proves who they are, and not after.
    if (SETS_A_DEADLINE.includes(act)) await readably(aircraft, [opened], () => needZoneData(settings.deferral));
    const item = entry === undefined ? undefined : { entry, units: [] };
    const basis =
      document ?? basisWords({ ...(melRow ? { row: melRow } : {}), ...(item ? { item } : {}) }, opened.life);
    const facts = {
      registration: aircraft.registration,
      number: defectNumber(aircraft, row),
      basis,
      releaseName: settings.releaseName,
    };
    const more = {
      ...(work ? { work: titleOfCard(opened.life, work) ?? work } : {}),
      ...(work && step ? { step: secondInWords(opened.life, work, step) } : {}),
      ...(staysOpen ? { staysOpen } : {}),
      ...(unforeseen ? { unforeseen } : {}),
      ...startAsked(query),
      ...(act === 'extend'
        ? {
            extension: await readably(aircraft, [opened], () =>
              extensionWords(tx, opened.life, settings, this.now()),
            ),
          }
        : {}),
      ...(act === 'stays-as-written' ? this.corrections.staying(opened.life, query.asked, reader, settings) : {}),
      ...(act === 'correct' || act === 'second-look'
        ? await this.correction(tx, aircraft, opened, query, settings)
        : {}),
    };
    return { act, statement: statementOf(act, { ...facts, ...more }, settings.releaseWording) };
  }

  /** What a correction says, or one that waits for a second look. */
  private async correction(
    tx: Tx,
    aircraft: AircraftRow,
    own: OpenedDefect,
    { act, part, ...query }: StatementQuery,
    settings: OperatorSettings,
  ): Promise<Partial<StatementFacts>> {
    const opened = await livesOf(tx, await tx.defects.open(aircraft.id));
    const { life } = own;
    const corrects = { tx, aircraft, settings, opened, at: this.now(), life };
    return readably(aircraft, [own, ...opened], async () => {
      if (act === 'second-look') return { correction: (await this.corrections.waiting(corrects, query.asked)).words };
      const points = { ...query, ...(part === undefined ? {} : { part: Number(part) }) };
      const { words, act: of, secondLook } = await this.corrections.prepare(corrects, points);
      return { correction: words, ofWriteUp: of === life.acts[0]?.id, waits: secondLook };
    });
  }

  private async found(tx: Tx, id: string): Promise<{ row: DefectRow; aircraft: AircraftRow }> {
    const row = await tx.defects.get(id);
    const aircraft = row ? await tx.aircraft.get(row.aircraftId) : null;
    if (!row || !aircraft) throw new Problem('not-found', `There is no defect ${id} here.`);
    return { row, aircraft };
  }

  private async lines(tx: Tx, aircraft: AircraftRow, rows: readonly DefectRow[]): Promise<DefectLine[]> {
    if (rows.length === 0) return [];
    const at = this.now();
    const mel = (await this.shelf.inForce(tx, aircraft.type))?.mel ?? null;
    const { base, counting, preset } = (await this.dispatch.settings(tx)).deferral;
    const { melStops } = presetOf(preset);
    const opened = await livesOf(tx, rows);
    const first = countedFrom(opened, at);
    const counted = opened.some(({ life }) => life.limits.some(({ clock }) => clock?.kind === 'counted'));
    const legs: Leg[] = await flownLegs(tx, aircraft.id, counted ? legsFrom(first, at) : first);
    const planned = counted ? await tx.flights.planned(aircraft.id, at, FLIGHTS_AHEAD) : [];
    return opened.map(({ row, life }) => {
      const used = usedOf(life, legs, counting);
      const projected = projectionOf(life, { at, legs, planned, counting });
      return defectLine(row, life, { aircraft, mel, at, used, base, melStops, counting, projected });
    });
  }
}

/** Whether a second person has to concur before a basis is signed, and who did since the item last changed. */
async function concurrenceView(tx: Tx, { id, version }: DefectRow, { deferral }: OperatorSettings) {
  const given = await concurrencesOf(tx, id, version);
  return {
    needed: deferral.concurrenceNeeded,
    given: given.map(({ basis, signature }) => ({ basis, ...signerOf(signature) })),
  };
}

/** Closed defects of other units of the item that stood beside this one, where a row of several units is in force. */
async function causesGone(tx: Tx, aircraft: AircraftRow, row: DefectRow, { limits }: DefectLife) {
  if (row.entry === null || !limits.some(({ pair }) => pair)) return [];
  const closed = await tx.defects.closedOn(aircraft.id, row.entry);
  return closed
    .filter(({ id, closedAt }) => id !== row.id && closedAt !== null && closedAt > row.recordedAt)
    .map((one) => ({
      id: one.id,
      number: defectNumber(aircraft, one),
      units: one.units,
      closedAt: one.closedAt ?? '',
    }));
}

/**
 * Orders by what is left: unanswered write-ups, then what ends by flights or hours, on a day that nobody knows and perhaps
 * today, then by the day; what has no end comes last.
 */
export function endOf({ deadline, state }: Pick<DefectLine, 'deadline' | 'state'>): string {
  if (state === 'unanswered') return '';
  return deadline?.counted ? '0' : (deadline?.endsAt ?? '9999');
}

/** The title of a card by the work on it, which a statement names; undefined for work of another kind. */
function titleOfCard({ cards }: DefectLife, work: string): string | undefined {
  return cards.find(({ started }) => started.id === work)?.started.card.title;
}

async function sealedNumbers(tx: Tx, defectId: string): Promise<Map<string, number | null>> {
  const acts = await tx.acts.of(defectId);
  const numbers = await tx.record.numbersOf(acts.map(({ entryId }) => entryId));
  return new Map(acts.map(({ id, entryId }) => [id, numbers.get(entryId) ?? null]));
}
