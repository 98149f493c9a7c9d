/** Puts together what is known of one aircraft and one flight, as the reasoner takes it. It decides nothing. */
import { deadlineOf, type DefectLife, type DocumentBasis } from '#deferrals';
import type { OpenDefect, OtherBasis, PlannedFlight, RecordedJudgement, Situation } from '#dispatch';
import type { Leg } from '#intervals';
import type { AircraftRow, FlightRow, JudgementRow, Tx } from '#store';
import { givenOn } from './combination.js';
import { ACCEPTANCE } from '../accepting/acceptance-kind.js';
import { isRecurrence } from '../repetitive/recurrence-kind.js';
import { factBook, stillPlanned } from './fact-book.js';
import { legsFor, usedOf } from './flown.js';
import { flightsUnderGrants, grantsInForce, type UsesUp } from './grants-in-force.js';
import { Problem } from '../http/problem.js';
import { livesOf, type OpenedDefect } from '../defects/defect-book.js';
import { type Proposal, readableGates } from './readable-gates.js';
import { workDone } from './work-done.js';
import type { OperatorSettings } from '../people/operator-settings.js';

export interface Asked {
  aircraft: AircraftRow;
  flight: FlightRow | null;
  at: string;
  settings: OperatorSettings;
  proposals: readonly Proposal[];
  /** The open defects, when they were read already in this transaction. */
  opened?: readonly OpenedDefect[];
  /** Open defects taken as fixed, with what they left on the aircraft put back. */
  fixed?: readonly string[];
}

export interface LoadedSituation {
  situation: Situation;
  defects: readonly OpenedDefect[];
  /** The same with those taken as fixed, to be asked with again. */
  opened: readonly OpenedDefect[];
}

export async function loadSituation(tx: Tx, asked: Asked): Promise<LoadedSituation> {
  const { aircraft, flight, at, settings, proposals, fixed = [] } = asked;
  const opened = asked.opened ?? (await livesOf(tx, await tx.defects.open(aircraft.id)));
  refuseStrangers(aircraft, opened, [...proposals.flatMap(({ defect }) => defect ?? []), ...fixed]);
  const defects = opened.filter(({ row }) => !fixed.includes(row.id));
  const [left, legs, underGrants, answered, judgements, directives] = await Promise.all([
    tx.register.ofAircraft(aircraft.id),
    legsFor(tx, aircraft, defects, proposals, at),
    flightsUnderGrants(tx, aircraft, defects),
    tx.facts.current(aircraft.id, flight?.id ?? null),
    tx.judgements.ofAircraft(aircraft.id),
    tx.mel.directives(aircraft.type),
  ]);
  const register = left.filter(({ defectId }) => defectId === null || !fixed.includes(defectId));
  const facts = factBook(answered);
  const judges = await tx.people.known(judgements.map(({ personId }) => personId));
  const situation: Situation = {
    at,
    tzdb: settings.deferral.tzdb,
    aircraft: {
      registration: aircraft.registration,
      type: aircraft.type,
      configuration: aircraft.configuration,
      serial: aircraft.serial,
    },
    defects: openDefects(defects, { asked, legs, underGrants }),
    flight: flight ? plannedFlight(flight, facts) : null,
    facts,
    work: defects.flatMap(({ life }) => workDone(life, legs, settings.deferral)),
    judgements: judgementsFor(
      judgements.filter(({ judgement }) => judgement !== ACCEPTANCE && !isRecurrence(judgement)),
      flight,
      judges,
    ),
    directives: directives.map(({ number, entry, units }) => ({ number, entry, ...(units ? { units } : {}) })),
    gates: readableGates(aircraft, defects, register, proposals, laterOf(at, flight)),
    settings: settings.judge,
  };
  return { situation, defects, opened };
}

/** What is left under a document that is over when the flight leaves belongs to nobody then. */
function laterOf(at: string, flight: FlightRow | null): string {
  return flight !== null && Date.parse(flight.offBlockAt) > Date.parse(at) ? flight.offBlockAt : at;
}

/** What counts for every open defect alike. */
interface Besides {
  asked: Asked;
  legs: readonly Leg[];
  underGrants: readonly UsesUp[];
}

/** A change to a defect that is not open here would be left out of the answer without a word. */
function refuseStrangers(
  { registration }: AircraftRow,
  defects: readonly OpenedDefect[],
  named: readonly string[],
): void {
  const strange = named.find((defect) => !defects.some(({ row }) => row.id === defect));
  if (strange !== undefined)
    throw new Problem('not-found', `There is no open defect ${strange} on ${registration} here.`);
}

function openDefects(defects: readonly OpenedDefect[], besides: Besides): OpenDefect[] {
  const { proposals, at } = besides.asked;
  const open = defects
    .filter(({ life }) => life.deferral !== null || proposals.some(({ defect }) => defect === life.defect))
    .map(({ life }) => openDefect(life, proposals.find(({ defect }) => defect === life.defect) ?? null, besides));
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

function openDefect(life: DefectLife, proposal: Proposal | null, { asked, legs, underGrants }: Besides): OpenDefect {
  const basis = life.deferral?.basis ?? null;
  const signedRow = basis?.kind === 'mel-row' ? basis.row : null;
  const row = proposal?.row ?? signedRow;
  const isOtherEntry = proposal !== null && proposal.entry !== life.item?.entry;
  const isSigned = signedRow !== null && row === signedRow && !isOtherEntry;
  const deadline = life.deferral === null ? null : deadlineOf(life.limits);
  const used = usedOf(life, legs, asked.settings.deferral.counting);
  const grants = grantsInForce(life, underGrants, asked.flight, asked.settings.judge.expiryInFlight);
  return {
    id: life.defect,
    entry: proposal?.entry ?? life.item?.entry ?? null,
    units: proposal?.units ?? life.item?.units ?? [],
    row,
    signed: isSigned,
    ...(signedRow === null || isSigned || isOtherEntry ? {} : { insteadOf: signedRow }),
    recordedAt: life.recordedAt,
    ...(deadline?.endsAt
      ? { deadline: { endsAt: deadline.endsAt, ...(deadline.lastDay ? { lastDay: deadline.lastDay } : {}) } }
      : {}),
    ...(used ? { used } : {}),
    ...formerLimits(life),
    ...(grants.length > 0 ? { grants } : {}),
    ...(basis && basis.kind !== 'mel-row' ? { basis: otherBasis(basis) } : {}),
  };
}

/** Signed before the row in force, and still binding: the limits of that row come last. */
function formerLimits({ limits, deferral }: DefectLife): Pick<OpenDefect, 'formerLimits'> {
  const own = deferral?.basis.kind === 'mel-row' ? deferral.basis.intervals.length : 1;
  const former = limits.slice(0, Math.max(0, limits.length - own));
  const counted = former.flatMap(({ clock, pair }) => (clock?.kind === 'counted' ? [{ clock, pair }] : []));
  return counted.length === 0 ? {} : { formerLimits: counted };
}

function otherBasis({ kind, reference, limit, conditions, interval }: DocumentBasis): OtherBasis {
  return { kind, reference, limit, conditions, ...(interval === undefined ? {} : { interval }) };
}

function plannedFlight(flight: FlightRow, answered: Situation['facts']): PlannedFlight {
  return {
    id: flight.id,
    number: flight.number,
    from: flight.fromStation,
    to: flight.toStation,
    offBlockAt: flight.offBlockAt,
    ...(flight.onBlockAt === null ? {} : { onBlockAt: flight.onBlockAt }),
    ...(flight.flightMinutes === null ? {} : { flightMinutes: flight.flightMinutes }),
    facts: stillPlanned(flight, answered),
  };
}

/** All that were given for this flight or for any: which of them still stands, the reasoner says. */
function judgementsFor(
  rows: readonly JudgementRow[],
  flight: FlightRow | null,
  judges: ReadonlyMap<string, { name: string }>,
): RecordedJudgement[] {
  return rows
    .filter(({ flightId }) => flightId === null || flightId === flight?.id)
    .map((row) => {
      const on = givenOn(row);
      return {
        judgement: row.judgement,
        accepted: row.accepted,
        by: judges.get(row.personId)?.name ?? '(name erased)',
        role: row.role as RecordedJudgement['role'],
        at: row.at,
        ...(row.validUntil === null ? {} : { validUntil: row.validUntil }),
        ...(row.flightId === null ? {} : { forFlight: row.flightId }),
        ...(on === null ? {} : { givenOn: on }),
      };
    });
}
