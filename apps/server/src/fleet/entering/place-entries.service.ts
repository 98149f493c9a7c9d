import { Inject, Injectable } from '@nestjs/common';
import { baseZone, IntervalInputError } from '#intervals';
import type { Tx } from '#store';
import type { Session } from '../../http/session.js';
import { CLOCK, type Clock } from '../../http/tokens.js';
import type { OrganisationBody, StationBody } from './bodies.js';
import { refusedField } from './refused-field.js';

/** Stations that the operator flies to, and organisations whose approvals its people sign under. */
@Injectable()
export class PlaceEntriesService {
  constructor(@Inject(CLOCK) private readonly now: Clock) {}

  async station(tx: Tx, session: Session, { code, name, zone: asked }: StationBody) {
    if ((await tx.operators.stations()).some((one) => one.code === code)) {
      throw refusedField('/code', `${code} is there already`);
    }
    const zone = zoneOf(asked);
    await tx.operators.addStation({ code, name, zone });
    await this.record(tx, session, 'station.entered', { code, name, zone });
    return { code };
  }

  async organisation(tx: Tx, session: Session, { name, approval }: OrganisationBody) {
    const known = (await tx.people.organisations()).find((one) => one.approvalNumber === approval);
    if (known) throw refusedField('/approval', `${approval} is the approval of ${known.name} already`);
    const id = await tx.people.addOrganisation({ name, approvalNumber: approval });
    await this.record(tx, session, 'organisation.entered', { id, name, approval });
    return { id };
  }

  private async record(tx: Tx, { personId }: Session, what: string, payload: object): Promise<void> {
    const now = this.now();
    await tx.record.append({
      who: personId,
      authorisation: null,
      organisation: null,
      what,
      aircraft: null,
      times: { recordedAt: now, enteredAt: now },
      payload,
    });
  }
}

function zoneOf(asked: string): string {
  try {
    return baseZone(asked);
  } catch (error) {
    if (!(error instanceof IntervalInputError)) throw error;
    throw refusedField('/zone', `${asked} is neither UTC nor the name of a time zone such as Europe/Paris`);
  }
}
