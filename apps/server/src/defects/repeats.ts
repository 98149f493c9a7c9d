/** Work of an item that is owed again and again: what was done, what was missed, what is owed next, in words. */
import { type DefectLife, type Departure, type Obligation, obligationsOf, proceduresOf } from '#deferrals';
import type { AircraftRow, FlightRow, Tx } from '#store';
import { flownDepartures, plannedDeparture } from '../movements/flown-legs.js';
import type { OperatorSettings } from '../people/operator-settings.js';
import { defectNumber } from './views.js';
import type { Scene } from './acting.js';
import type { OpenedDefect } from './defect-book.js';

const FLIGHTS_AHEAD = 40;

export interface RepeatLine {
  work: string;
  text: string;
  state: Obligation['state'];
  words: string;
  because: string;
  /** The departure before which it was or is owed, or the first that it was good for. */
  flight: { id: string | null; number: string | null; from: string | null; offBlockAt: string } | null;
  /** How many departures it was good for, or left without it. */
  departures: number;
  done: { by: string; doneAt: string; enteredAt: string; lateReason: string | null } | null;
}

const WORDS: Record<Obligation['state'], string> = {
  done: 'done',
  missed: 'missed',
  'not-known': 'not known',
  due: 'due',
  coming: 'not due yet',
};

/** When the aircraft first left the blocks since the work, that instant included, and before now; null where it did not. */
export async function leftBetween({ tx, aircraft, context }: Scene, doneAt: string): Promise<string | null> {
  const [from, until] = [Date.parse(doneAt), Date.parse(context.now)];
  const left = (await flownDepartures(tx, aircraft.id, doneAt)).find(({ leg: { offBlockAt } }) => {
    const off = Date.parse(offBlockAt);
    return from <= off && off < until;
  });
  return left?.leg.offBlockAt ?? null;
}

/** Flown and planned departures of an aircraft, from an instant on. */
export async function departuresOf(
  tx: Tx,
  aircraft: AircraftRow,
  from: string,
  at: string,
): Promise<{ departures: Departure[]; numbers: Map<string, string> }> {
  const planned: FlightRow[] = await tx.flights.planned(aircraft.id, at, FLIGHTS_AHEAD);
  const flown = await flownDepartures(tx, aircraft.id, from);
  const numbers = new Map((await tx.flights.ofAircraft(aircraft.id)).map(({ id, number }) => [id, number]));
  return { departures: [...flown, ...planned.map(plannedDeparture)], numbers };
}

/** The obligations of one item, in order of time. */
export async function repeatLines(
  tx: Tx,
  aircraft: AircraftRow,
  life: DefectLife,
  { deferral: { base, tzdb, counting }, judge: { expiryInFlight } }: OperatorSettings,
  at: string,
): Promise<RepeatLine[]> {
  if (!comesAgain(life)) return [];
  const { departures, numbers } = await departuresOf(tx, aircraft, life.recordedAt, at);
  const hoursCountedAt = expiryInFlight === 'arrival-inside' ? ('arrival' as const) : ('departure' as const);
  const settled = { base, tzdb, counting: { ...counting, hoursCountedAt } };
  const texts = new Map(life.deferral && proceduresOf(life.deferral.basis).map((o) => [o.work, o.procedure.text]));
  return obligationsOf(life, departures, at, settled).map((one) => line(one, texts, numbers));
}

function comesAgain({ deferral }: DefectLife): boolean {
  return (
    deferral !== null && proceduresOf(deferral.basis).some(({ procedure: { repeat = 'once' } }) => repeat !== 'once')
  );
}

function line(one: Obligation, texts: ReadonlyMap<string, string>, numbers: ReadonlyMap<string, string>): RepeatLine {
  const { work, state, before, done, because, departures } = one;
  return {
    work,
    text: texts.get(work) ?? '',
    state,
    words: WORDS[state],
    because,
    flight:
      before === null
        ? null
        : {
            id: before.flight,
            number: (before.flight === null ? undefined : numbers.get(before.flight)) ?? null,
            from: before.from,
            offBlockAt: before.leg.offBlockAt,
          },
    departures,
    done:
      done === null
        ? null
        : {
            by: done.by.name,
            doneAt: done.doneAt,
            enteredAt: done.enteredAt,
            lateReason: done.lateReason ?? null,
          },
  };
}

/** What of all open items is owed next or was missed, with the item it is for. */
export async function repeatsOfFleet(
  tx: Tx,
  opened: readonly { aircraft: AircraftRow; one: OpenedDefect }[],
  settings: OperatorSettings,
  at: string,
) {
  const lines = [];
  for (const { aircraft, one } of opened) {
    const own = await repeatLines(tx, aircraft, one.life, settings, at);
    for (const repeat of own.filter(({ state }) => state !== 'done')) {
      lines.push({
        ...repeat,
        defect: one.row.id,
        number: defectNumber(aircraft, one.row),
        registration: aircraft.registration,
      });
    }
  }
  return lines;
}
