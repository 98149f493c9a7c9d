/** Puts together what is known of one aircraft and one flight, as the reasoner takes it. It decides nothing. */
import { deadlineOf, type DefectLife, type DocumentBasis } from '#deferrals';
import type { OpenDefect, OtherBasis, PlannedFlight, RecordedJudgement, Situation } from '#dispatch';
import type { Leg } from '#intervals';
import type { AircraftRow, FactRow, FlightRow, JudgementRow, LeftItemRow, Tx } from '#store';
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

/** Asks ahead for what every situation of this aircraft is put together from, while something else is waited for. */
export async function askAhead(tx: Tx, { id, type }: Pick<AircraftRow, 'id' | 'type'>): Promise<void> {
  await Promise.all([
    tx.register.ofAircraft(id),
    tx.facts.current(id, []),
    tx.judgements.ofAircraft(id),
    tx.mel.directives(type),
  ]);
}

export interface LoadedSituation {
  situation: Situation;
  defects: readonly OpenedDefect[];
  /** The same with those taken as fixed, to be asked with again. */
  opened: readonly OpenedDefect[];
}

/** What is read of an aircraft once, whichever of its flights is asked about. */
interface AircraftRead extends Pick<LoadedSituation, 'defects' | 'opened'> {
  asked: Omit<Asked, 'flight'>;
  legs: readonly Leg[];
  underGrants: readonly UsesUp[];
  register: readonly LeftItemRow[];
  judgements: readonly JudgementRow[];
  judges: Map<string, { name: string }>;
  directives: Situation['directives'];
}

export async function loadSituation(tx: Tx, asked: Asked): Promise<LoadedSituation> {
  const flights = asked.flight === null ? [] : [asked.flight];
  const { read, answered } = await readAircraft(tx, asked, flights);
  return { situation: situationFor(read, asked.flight, answered), defects: read.defects, opened: read.opened };
}

/** The same for each of several flights of the aircraft, read once for all of them. */
export async function loadSituations(
  tx: Tx,
  asked: Omit<Asked, 'flight'>,
  flights: readonly FlightRow[],
): Promise<{ none: Situation; each: Situation[]; opened: readonly OpenedDefect[] }> {
  const { read, answered } = await readAircraft(tx, asked, flights);
  return {
    none: situationFor(read, null, answered),
    each: flights.map((flight) => situationFor(read, flight, answered)),
    opened: read.opened,
  };
}

async function readAircraft(tx: Tx, asked: Omit<Asked, 'flight'>, flights: readonly FlightRow[]) {
  const { aircraft, at, proposals, fixed = [] } = asked;
  const opened = asked.opened ?? (await livesOf(tx, await tx.defects.open(aircraft.id)));
  refuseStrangers(aircraft, opened, [...proposals.flatMap(({ defect }) => defect ?? []), ...fixed]);
  const defects = opened.filter(({ row }) => !fixed.includes(row.id));
  const ids = flights.map(({ id }) => id);
  const [left, legs, underGrants, answered, judgements, directives] = await Promise.all([
    tx.register.ofAircraft(aircraft.id),
    legsFor(tx, aircraft, defects, proposals, at),
    flightsUnderGrants(tx, aircraft, defects),
    tx.facts.current(aircraft.id, ids),
    tx.judgements.ofAircraft(aircraft.id),
    tx.mel.directives(aircraft.type),
  ]);
  const register = left.filter(({ defectId }) => defectId === null || !fixed.includes(defectId));
  const judges = await tx.people.known(judgements.map(({ personId }) => personId));
  const inForce = directives.map(({ number, entry, units }) => ({ number, entry, ...(units ? { units } : {}) }));
  const about = { legs, underGrants, register, judgements, judges, directives: inForce };
  return { read: { asked, defects, opened, ...about } satisfies AircraftRead, answered };
}

function situationFor(read: AircraftRead, flight: FlightRow | null, answered: readonly FactRow[]): Situation {
  const { asked, defects, legs, register } = read;
  const { aircraft, at, settings, proposals } = asked;
  const facts = factBook(answered.filter(({ flightId }) => flightId === null || flightId === flight?.id));
  return {
    at,
    tzdb: settings.deferral.tzdb,
    aircraft: {
      registration: aircraft.registration,
      type: aircraft.type,
      configuration: aircraft.configuration,
      serial: aircraft.serial,
    },
    defects: openDefects(read, flight),
    flight: flight ? plannedFlight(flight, facts) : null,
    facts,
    work: defects.flatMap(({ life }) => workDone(life, legs, settings.deferral)),
    judgements: judgementsFor(
      read.judgements.filter(({ judgement }) => judgement !== ACCEPTANCE && !isRecurrence(judgement)),
      flight,
      read.judges,
    ),
    directives: read.directives,
    gates: readableGates(aircraft, defects, register, proposals, laterOf(at, flight)),
    settings: settings.judge,
  };
}

/** What is left under a document that is over when the flight leaves belongs to nobody then. */
function laterOf(at: string, flight: FlightRow | null): string {
  return flight !== null && Date.parse(flight.offBlockAt) > Date.parse(at) ? flight.offBlockAt : at;
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

function openDefects(read: AircraftRead, flight: FlightRow | null): OpenDefect[] {
  const { proposals, at } = read.asked;
  const open = read.defects
    .filter(({ life }) => life.deferral !== null || proposals.some(({ defect }) => defect === life.defect))
    .map(({ life }) =>
      openDefect(life, flight, proposals.find(({ defect }) => defect === life.defect) ?? null, read),
    );
  const unwritten = proposals
    .filter(({ defect }) => defect === undefined)
    .map((proposal, index) => ({
      id: `proposed-${index + 1}`,
      entry: proposal.entry,
      units: proposal.units,
      row: proposal.row,
      signed: false,
      rowAsked: true,
      recordedAt: at,
    }));
  return [...open, ...unwritten];
}

function openDefect(
  life: DefectLife,
  flight: FlightRow | null,
  proposal: Proposal | null,
  { asked, legs, underGrants }: AircraftRead,
): OpenDefect {
  const basis = life.deferral?.basis ?? null;
  const signedRow = basis?.kind === 'mel-row' ? basis.row : null;
  const row = proposal?.row ?? signedRow;
  const isOtherEntry = proposal !== null && proposal.entry !== life.item?.entry;
  const isSigned = signedRow !== null && row === signedRow && !isOtherEntry;
  const deadline = life.deferral === null ? null : deadlineOf(life.limits);
  const used = usedOf(life, legs, asked.settings.deferral.counting);
  const grants = grantsInForce(life, underGrants, flight, asked.settings.judge.expiryInFlight);
  return {
    id: life.defect,
    entry: proposal?.entry ?? life.item?.entry ?? null,
    units: proposal?.units ?? life.item?.units ?? [],
    row,
    signed: isSigned,
    ...(proposal === null ? {} : { rowAsked: true }),
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
