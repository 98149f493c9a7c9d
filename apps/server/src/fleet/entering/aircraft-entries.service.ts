import { Inject, Injectable } from '@nestjs/common';
import type { MelContent } from '#mel';
import { type AircraftRow, lockAircraft, type Tx } from '#store';
import { defectNumber } from '../../defects/views.js';
import { Problem } from '../../http/problem.js';
import type { Session } from '../../http/session.js';
import { CLOCK, type Clock } from '../../http/tokens.js';
import { MelShelf } from '../../mel/mel-shelf.js';
import type { AircraftBody, FitBody, FitChangeBody, ServiceBody } from './bodies.js';
import { refusedField } from './refused-field.js';
import { retired } from './retired.js';

/** An aircraft comes into the fleet, is changed in what the MEL asks of it, leaves, and may come back. */
@Injectable()
export class AircraftEntriesService {
  constructor(
    @Inject(CLOCK) private readonly now: Clock,
    private readonly shelf: MelShelf,
  ) {}

  /** Every aircraft there ever was, and what the MEL of each type asks of one. */
  async list(tx: Tx) {
    const aircraft = await tx.aircraft.list();
    const loaded = (await tx.mel.list()).filter(({ inForce }) => inForce);
    const types = [...new Set([...aircraft.map(({ type }) => type), ...loaded.map((one) => one.aircraftType)])];
    const known = [];
    for (const type of types.toSorted()) {
      const shelved = await this.shelf.inForce(tx, type);
      known.push({
        type,
        mel: shelved ? `${shelved.revision.document}, revision ${shelved.revision.revision}` : null,
        configurations: shelved ? codesIn(shelved.mel.content) : [],
      });
    }
    const stations = await tx.operators.stations();
    return {
      at: this.now(),
      aircraft: aircraft.map(entryView),
      types: known,
      stations: stations.map(({ code, name }) => ({ code, name })),
    };
  }

  async enter(tx: Tx, session: Session, { registration, type, ...fit }: AircraftBody) {
    await this.refuseKnown(tx, registration);
    const known = (await tx.mel.list()).map(({ aircraftType }) => aircraftType);
    const spelt = known.find((one) => one.toLowerCase() === type.toLowerCase() && one !== type);
    if (spelt !== undefined) throw refusedField('/type', `the MEL spells it ${spelt}`);
    const id = await tx.aircraft.add({ registration, type, ...(await fitOf(tx, fit)) });
    const row = await rowOf(tx, id);
    await this.record(tx, session, 'aircraft.entered', row, { entered: entryView(row) });
    return { aircraft: entryView(row) };
  }

  async change(tx: Tx, session: Session, id: string, seen: number, { reason, ...fit }: FitChangeBody) {
    const was = await this.held(tx, id, seen);
    await tx.aircraft.change(id, seen, await fitOf(tx, fit));
    const row = await rowOf(tx, id);
    await this.record(tx, session, 'aircraft.changed', row, { was: entryView(was), is: entryView(row), reason });
    return { aircraft: entryView(row) };
  }

  /** Only once nothing is open on it, left on it or planned for it: what left the fleet is looked at by nobody. */
  async retire(tx: Tx, session: Session, id: string, seen: number, { reason }: ServiceBody) {
    const aircraft = await this.held(tx, id, seen);
    if (aircraft.retiredAt !== null) throw retired(aircraft);
    const open = (await tx.defects.open(id)).map((row) => defectNumber(aircraft, row));
    const left = (await tx.register.ofAircraft(id)).map(({ kind, place }) => `${kind} ${place}`);
    const planned = (await tx.flights.planned(id, this.now(), MOST_NAMED)).map(({ number }) => `flight ${number}`);
    const still = [...open, ...left, ...planned];
    if (still.length > 0) {
      throw new Problem('aircraft-in-use', `Still open, left or planned: ${still.slice(0, MOST_NAMED).join(', ')}.`);
    }
    await tx.aircraft.change(id, seen, { retiredAt: this.now() });
    const row = await rowOf(tx, id);
    await this.record(tx, session, 'aircraft.retired', row, { reason });
    return { aircraft: entryView(row) };
  }

  async bringBack(tx: Tx, session: Session, id: string, seen: number, { reason }: ServiceBody) {
    const aircraft = await this.held(tx, id, seen);
    if (aircraft.retiredAt === null) throw refusedField('/reason', `${aircraft.registration} is in service`);
    await tx.aircraft.change(id, seen, { retiredAt: null });
    const row = await rowOf(tx, id);
    await this.record(tx, session, 'aircraft.brought-back', row, { reason });
    return { aircraft: entryView(row) };
  }

  private async held(tx: Tx, id: string, seen: number): Promise<AircraftRow> {
    const aircraft = await lockAircraft(tx, id);
    if (!aircraft) throw new Problem('not-found', `There is no aircraft ${id} here.`);
    if (aircraft.version === seen) return aircraft;
    const detail = `${aircraft.registration} is at version ${aircraft.version}, not ${seen}.`;
    throw new Problem('changed-meanwhile', detail, { current: aircraft.version });
  }

  /** Movement messages carry no hyphen, so two marks that differ by one alone would be one aircraft to them. */
  private async refuseKnown(tx: Tx, registration: string): Promise<void> {
    const [known] = await tx.aircraft.withMarks([registration.replaceAll('-', '')]);
    if (!known) return;
    const gone = known.retiredAt === null ? '' : ' and left the fleet; bring it back instead';
    throw refusedField('/registration', `${known.registration} is there already${gone}`);
  }

  private async record(tx: Tx, { personId }: Session, what: string, row: AircraftRow, payload: object) {
    const now = this.now();
    const { id, registration } = row;
    await tx.record.append({
      who: personId,
      authorisation: null,
      organisation: null,
      what,
      aircraft: { id, registration },
      times: { recordedAt: now, enteredAt: now },
      payload,
    });
  }
}

const MOST_NAMED = 12;

async function rowOf(tx: Tx, id: string): Promise<AircraftRow> {
  const row = await tx.aircraft.get(id);
  if (!row) throw new Error(`Aircraft ${id} was written and is not there.`);
  return row;
}

async function fitOf(tx: Tx, { serial, configuration, base }: FitBody) {
  const stations = base === undefined ? [] : await tx.operators.stations();
  if (base !== undefined && !stations.some(({ code }) => code === base)) {
    throw refusedField('/base', `there is no station ${base}; enter it first`);
  }
  return { serial: serial ?? null, configuration: configuration ?? null, basedAt: base ?? null };
}

function entryView({ id, registration, type, serial, configuration, basedAt, retiredAt, version }: AircraftRow) {
  return { id, registration, type, serial, configuration, base: basedAt, retiredAt, version };
}

/** Configuration codes that entries of a MEL are told apart by. */
function codesIn({ entries }: MelContent): string[] {
  const all = entries.flatMap(({ subEntries }) =>
    subEntries.flatMap(({ appliesTo }) => appliesTo?.configurations ?? []),
  );
  return [...new Set(all)].toSorted();
}
