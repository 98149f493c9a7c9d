import { Inject, Injectable } from '@nestjs/common';
import { newId, type StationCoverRow, type StationRow, type Tx } from '#store';
import { Problem } from '../http/problem.js';
import type { Session } from '../http/session.js';
import { CLOCK, type Clock } from '../http/tokens.js';
import { localText } from './flight-line.js';
import type { StationCoverBody } from './stations.body.js';

/** Who may say who is where. */
const MAY_SAY = ['maintenance-control', 'engineer', 'administrator'] as const;

/** Who is authorised and equipped at which station, as people enter it. What is not entered is not known. */
@Injectable()
export class StationsService {
  constructor(@Inject(CLOCK) private readonly now: Clock) {}

  async list(tx: Tx) {
    const at = this.now();
    const covers = (await tx.stationCovers.inForce()).filter(({ untilAt }) => untilAt === null || untilAt > at);
    const people = await tx.people.known(
      covers.flatMap(({ personId, enteredBy }) => [personId ?? [], enteredBy ?? []].flat()),
    );
    const name = (id: string | null) => (id === null ? null : (people.get(id)?.name ?? '(name erased)'));
    const line = (cover: StationCoverRow, { zone }: StationRow) => ({
      id: cover.id,
      person: name(cover.personId),
      equipment: cover.equipment,
      from: cover.fromAt,
      fromLocal: cover.fromAt === null ? null : localText(cover.fromAt, zone),
      until: cover.untilAt,
      untilLocal: cover.untilAt === null ? null : localText(cover.untilAt, zone),
      source: cover.source,
      enteredBy: name(cover.enteredBy),
      enteredAt: cover.enteredAt,
      version: cover.version,
    });
    const members = await tx.people.members();
    return {
      at,
      stations: (await tx.operators.stations()).map((station) => ({
        code: station.code,
        name: station.name,
        zone: station.zone,
        people: covers.filter((cover) => cover.station === station.code).map((cover) => line(cover, station)),
      })),
      maintain: members
        .filter(({ roles }) => roles.some((role) => role === 'technician' || role === 'engineer'))
        .map(({ personId, name: called }) => ({ id: personId, name: called })),
    };
  }

  async enter(tx: Tx, session: Session, code: string, body: StationCoverBody): Promise<{ id: string }> {
    refuseUnlessMaySay(session);
    const station = (await tx.operators.stations()).find((one) => one.code === code);
    if (!station) throw new Problem('not-found', `There is no station ${code} here.`);
    const { person, equipment, source } = body;
    if (person !== undefined && (await tx.people.member(person)) === null) {
      throw refused('/person', 'nobody of this operator has this id');
    }
    if (person === undefined && equipment.length > 0) throw refused('/equipment', 'nobody is there to use it');
    const [fromAt, untilAt] = [body.from, body.until].map((at) =>
      at === undefined ? null : new Date(at).toISOString(),
    );
    if (fromAt && untilAt && untilAt <= fromAt) throw refused('/until', 'it would end before it begins');
    const now = this.now();
    const cover = {
      id: newId(),
      station: code,
      personId: person ?? null,
      equipment,
      fromAt: fromAt ?? null,
      untilAt: untilAt ?? null,
      source,
    };
    await tx.stationCovers.add({ ...cover, enteredBy: session.personId, enteredAt: now });
    const { personId, ...rest } = cover;
    await this.record(tx, session, 'station.people-entered', {
      ...rest,
      person: personId === null ? null : await tx.people.referenceOf(personId),
    });
    return { id: cover.id };
  }

  async end(tx: Tx, session: Session, id: string, seen: number): Promise<void> {
    refuseUnlessMaySay(session);
    const cover = await tx.stationCovers.get(id);
    if (!cover || cover.endedAt !== null)
      throw new Problem('not-found', `Nothing of that id is in force at a station.`);
    await tx.stationCovers.end(id, seen, this.now());
    await this.record(tx, session, 'station.people-ended', { id, station: cover.station });
  }

  private async record(tx: Tx, session: Session, what: string, payload: object): Promise<void> {
    const now = this.now();
    await tx.record.append({
      who: session.personId,
      authorisation: null,
      organisation: null,
      what,
      aircraft: null,
      times: { recordedAt: now, enteredAt: now },
      payload,
    });
  }
}

function refuseUnlessMaySay({ roles }: Session): void {
  if (MAY_SAY.some((role) => roles.includes(role))) return;
  throw new Problem('role-missing', `Who is at a station: only ${MAY_SAY.join(' or ')} may say.`, {
    mayAnswer: [...MAY_SAY],
  });
}

function refused(pointer: string, reason: string): Problem {
  return new Problem('invalid-input', reason, { errors: [{ pointer, reason }] });
}
