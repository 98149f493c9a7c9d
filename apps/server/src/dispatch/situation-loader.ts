/** Puts together what is known of one aircraft and one flight, as the reasoner takes it. It decides nothing. */
import { type DefectLife, placardsFitted, standing } from '#deferrals';
import type { KnownFact, OpenDefect, PlannedFlight, RecordedJudgement, Situation, WorkState } from '#dispatch';
import { countUsed, type Leg, type Used } from '#intervals';
import { factOf, workKey } from '#mel';
import type { AircraftRow, FactRow, FlightRow, JudgementRow, Tx } from '#store';
import { coversAll, type CoveredItem } from './combination.js';
import { livesOf, type OpenedDefect } from '../defects/defect-book.js';
import { type Proposal, readableGates } from './readable-gates.js';
import type { OperatorSettings } from '../people/operator-settings.js';

export interface Asked {
  aircraft: AircraftRow;
  flight: FlightRow | null;
  at: string;
  settings: OperatorSettings;
  proposals: readonly Proposal[];
  /** The open defects, when they were read already in this transaction. */
  opened?: readonly OpenedDefect[];
}

export interface LoadedSituation {
  situation: Situation;
  defects: readonly OpenedDefect[];
}

export async function loadSituation(tx: Tx, asked: Asked): Promise<LoadedSituation> {
  const { aircraft, flight, at, settings, proposals } = asked;
  const defects = asked.opened ?? (await livesOf(tx, await tx.defects.open(aircraft.id)));
  const register = await tx.register.ofAircraft(aircraft.id);
  const legs = await legsFor(tx, aircraft, defects, at);
  const facts = await tx.facts.current(aircraft.id, flight?.id ?? null);
  const judgements = await tx.judgements.ofAircraft(aircraft.id);
  const directives = await tx.mel.directives(aircraft.type);
  const situation: Situation = {
    at,
    tzdb: settings.deferral.tzdb,
    aircraft: {
      registration: aircraft.registration,
      type: aircraft.type,
      configuration: aircraft.configuration,
      serial: aircraft.serial,
    },
    defects: openDefects(defects, proposals, legs, at),
    flight: flight ? plannedFlight(flight) : null,
    facts: factBook(facts),
    work: defects.flatMap(({ life }) => workDone(life)),
    judgements: latestJudgements(judgements, flight, defects.map(coveredItem)),
    directives: directives.map(({ number, entry, units }) => ({ number, entry, ...(units ? { units } : {}) })),
    gates: readableGates(aircraft, defects, register, proposals),
    settings: settings.judge,
  };
  return { situation, defects };
}

function openDefects(
  defects: readonly OpenedDefect[],
  proposals: readonly Proposal[],
  legs: readonly Leg[],
  at: string,
): OpenDefect[] {
  const open = defects
    .filter(({ life }) => life.deferral !== null || proposals.some(({ defect }) => defect === life.defect))
    .map(({ life }) => openDefect(life, proposals.find(({ defect }) => defect === life.defect) ?? null, legs));
  const unwritten = proposals
    .filter(({ defect }) => defect === undefined)
    .map((proposal, index) => ({
      id: `proposed-${index + 1}`,
      entry: proposal.entry,
      units: proposal.units,
      row: proposal.row,
      signed: false,
      recordedAt: at,
    }));
  return [...open, ...unwritten];
}

function openDefect(life: DefectLife, proposal: Proposal | null, legs: readonly Leg[]): OpenDefect {
  const basis = life.deferral?.basis ?? null;
  const signedRow = basis?.kind === 'mel-row' ? basis.row : null;
  const row = proposal?.row ?? signedRow;
  const { deadline } = standing(life, life.enteredAt);
  const used = usedOf(life, legs);
  return {
    id: life.defect,
    entry: proposal?.entry ?? life.item?.entry ?? null,
    units: proposal?.units ?? life.item?.units ?? [],
    row,
    signed: signedRow !== null && row === signedRow && proposal === null,
    recordedAt: life.recordedAt,
    ...(deadline?.endsAt
      ? { deadline: { endsAt: deadline.endsAt, ...(deadline.lastDay ? { lastDay: deadline.lastDay } : {}) } }
      : {}),
    ...(used ? { used } : {}),
    ...(basis && basis.kind !== 'mel-row'
      ? { basis: { kind: basis.kind, reference: basis.reference, limit: basis.limit, conditions: basis.conditions } }
      : {}),
  };
}

/** What was used of the first clock signed: used flights and hours count from the start, whatever row was signed since. */
export function usedOf(life: DefectLife, legs: readonly Leg[]): Used | null {
  const clock = life.limits.find((limit) => limit.clock !== null)?.clock;
  return clock ? countUsed(clock, legs) : null;
}

export function legOf({ offBlockAt, onBlockAt, flightMinutes }: FlightRow): Leg {
  const block = onBlockAt === null ? 0 : Math.round((Date.parse(onBlockAt) - Date.parse(offBlockAt)) / 60_000);
  const minutes = flightMinutes ?? block;
  return {
    offBlockAt,
    ...(onBlockAt === null ? {} : { onBlockAt }),
    blockMinutes: Math.max(block, minutes),
    flightMinutes: minutes,
    cycles: 1,
    landings: 1,
  };
}

/** Flown legs are read only where something is counted in them. */
async function legsFor(tx: Tx, aircraft: AircraftRow, defects: readonly OpenedDefect[], at: string): Promise<Leg[]> {
  const counted = defects.filter(({ life }) => life.limits.some(({ clock }) => clock?.kind === 'counted'));
  if (counted.length === 0) return [];
  return (await tx.flights.flown(aircraft.id, earliestRecord(counted, at))).map(legOf);
}

function earliestRecord(defects: readonly OpenedDefect[], at: string): string {
  return defects.reduce((first, { row }) => (row.recordedAt < first ? row.recordedAt : first), at);
}

function plannedFlight(flight: FlightRow): PlannedFlight {
  return {
    id: flight.id,
    number: flight.number,
    from: flight.fromStation,
    to: flight.toStation,
    offBlockAt: flight.offBlockAt,
    ...(flight.onBlockAt === null ? {} : { onBlockAt: flight.onBlockAt }),
    ...(flight.flightMinutes === null ? {} : { flightMinutes: flight.flightMinutes }),
    facts: flight.facts as PlannedFlight['facts'] & object,
  };
}

/** The newest answer for each key; one about the flight stands before one about the aircraft. */
function factBook(rows: readonly FactRow[]): Record<string, KnownFact> {
  const book: Record<string, KnownFact> = {};
  for (const row of rows.toSorted((one, other) => Number(one.flightId !== null) - Number(other.flightId !== null))) {
    const validUntil = row.validUntil ?? defaultValidity(row);
    book[row.key] = {
      value: row.value,
      ...(row.source ? { source: row.source } : {}),
      observedAt: row.observedAt,
      ...(validUntil ? { validUntil } : {}),
    };
  }
  return book;
}

function defaultValidity({ key, observedAt }: FactRow): string | null {
  const minutes = factOf(key.replace(/\[.*$/, ''))?.validity;
  return typeof minutes === 'number' ? new Date(Date.parse(observedAt) + minutes * 60_000).toISOString() : null;
}

function workDone(life: DefectLife): WorkState[] {
  const procedures: WorkState[] = life.procedures.map((done) => ({
    work: done.work,
    defect: life.defect,
    doneAt: done.doneAt,
    by: done.by.name,
    ...(done.validUntil === null ? {} : { validUntil: done.validUntil }),
    ...(done.forFlight === null ? {} : { forFlight: done.forFlight }),
  }));
  const basis = life.deferral?.basis;
  if (basis?.kind !== 'mel-row' || !basis.placard || !placardsFitted(life).includes(basis.placard.text)) {
    return procedures;
  }
  const fitted = life.acts.findLast(({ kind }) => kind === 'placard-fitted');
  const placard = { work: workKey(basis.entry, basis.row, 'placard'), defect: life.defect };
  return [...procedures, fitted ? { ...placard, doneAt: fitted.enteredAt, by: fitted.by.name } : placard];
}

function coveredItem({ life }: OpenedDefect): CoveredItem {
  const basis = life.deferral?.basis;
  return { defect: life.defect, entry: life.item?.entry ?? null, row: basis?.kind === 'mel-row' ? basis.row : null };
}

function latestJudgements(
  rows: readonly JudgementRow[],
  flight: FlightRow | null,
  open: readonly CoveredItem[],
): RecordedJudgement[] {
  const latest = new Map<string, JudgementRow>();
  for (const row of rows) {
    if (row.flightId !== null && row.flightId !== flight?.id) continue;
    if (row.judgement === 'combination' && !coversAll(row, open)) continue;
    latest.set(row.judgement, row);
  }
  return [...latest.values()].map((row) => ({
    judgement: row.judgement,
    accepted: row.accepted,
    by: row.personId,
    role: row.role as RecordedJudgement['role'],
    at: row.at,
    ...(row.validUntil === null ? {} : { validUntil: row.validUntil }),
    ...(row.flightId === null ? {} : { forFlight: row.flightId }),
  }));
}
