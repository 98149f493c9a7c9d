import { Inject, Injectable } from '@nestjs/common';
import type { AircraftRow, LegRow, Tx } from '#store';
import { aircraftOr404, DispatchService } from '../dispatch/dispatch.service.js';
import { Problem } from '../http/problem.js';
import type { Session } from '../http/session.js';
import { CLOCK, type Clock } from '../http/tokens.js';
import type { LegBody, LegsQuery } from './bodies.js';
import { writeLegs } from './leg-book.js';
import { legByPerson } from './leg-by-person.js';
import { type LegContent, overlap, withdrawn } from './leg-content.js';
import { planOfLeg } from './plan-of-leg.js';
import { readingOf } from './reading.js';
import { StandingsService } from './standings.service.js';

const DAY = 86_400_000;
const DAYS_SHOWN = 30;

/** Legs as people read them, enter them and correct them. What a person says stands until a person changes it. */
@Injectable()
export class LegsService {
  constructor(
    @Inject(CLOCK) private readonly now: Clock,
    private readonly standings: StandingsService,
    private readonly dispatch: DispatchService,
  ) {}

  async ofAircraft(tx: Tx, id: string, { from, until }: LegsQuery) {
    const aircraft = await aircraftOr404(tx, id);
    const at = this.now();
    const first = from === undefined ? away(at, -DAYS_SHOWN * DAY) : new Date(from).toISOString();
    const legs = await tx.legs.flown(id, first, until === undefined ? null : new Date(until).toISOString());
    return {
      at,
      from: first,
      aircraft,
      legs,
      versions: await tx.legs.versions(legs.map((leg) => leg.id)),
      defects: await tx.defects.ofAircraft(id),
      reading: readingOf(await tx.operators.current(), await this.dispatch.settings(tx)),
    };
  }

  async enter(tx: Tx, session: Session, aircraftId: string, body: LegBody) {
    if (body.ending === 'withdrawn') throw refused('/ending', 'a leg that was never entered cannot be withdrawn');
    const aircraft = await this.held(tx, aircraftId);
    const content = legByPerson(body, aircraftId, this.now());
    return this.write(tx, session, { aircraft, of: null, content, reason: body.reason });
  }

  async correct(tx: Tx, session: Session, aircraftId: string, legId: string, seen: number, body: LegBody) {
    const aircraft = await this.held(tx, aircraftId);
    const of = await tx.legs.get(legId);
    if (of?.aircraftId !== aircraftId)
      throw new Problem('not-found', `There is no leg ${legId} of ${aircraft.registration} here.`);
    if (of.version !== seen) {
      const detail = `The leg is at version ${of.version}, not ${seen}.`;
      throw new Problem('changed-meanwhile', detail, { current: of.version });
    }
    const content = body.ending === 'withdrawn' ? withdrawn(of) : legByPerson(body, aircraftId, this.now());
    const { sequence, divertedFrom, divertedReason } = of;
    const kept = { sequence, divertedFrom, divertedReason };
    return this.write(tx, session, { aircraft, of, content: { ...content, ...kept }, reason: body.reason });
  }

  /** The intake is taken first, as for messages: they may be about the same leg. */
  private async held(tx: Tx, aircraftId: string): Promise<AircraftRow> {
    await tx.movements.takeIntake();
    const aircraft = await tx.aircraft.lock(aircraftId);
    if (!aircraft) throw new Problem('not-found', `There is no aircraft ${aircraftId} here.`);
    return aircraft;
  }

  private async write(
    tx: Tx,
    session: Session,
    {
      aircraft,
      of,
      content,
      reason,
    }: { aircraft: AircraftRow; of: LegRow | null; content: LegContent; reason: string },
  ) {
    if (content.ending !== 'withdrawn') await this.refuseTwoAtOnce(tx, of, content);
    const planned = { ...content, flightId: await this.planOf(tx, content) };
    const by = { source: 'person' as const, personId: session.personId, reason, now: this.now() };
    const versions = [{ of, content: planned, messageId: null }];
    const { done, items, answers } = await this.standings.changedBy(tx, [aircraft], this.now(), () =>
      writeLegs(tx, versions, [aircraft], by),
    );
    const [leg] = done;
    if (!leg) throw new Error('A leg was written and is not there.');
    return { leg, items, answers };
  }

  /** An aircraft flies one leg at a time. */
  private async refuseTwoAtOnce(tx: Tx, of: LegRow | null, content: LegContent): Promise<void> {
    const near = await tx.legs.flown(
      content.aircraftId,
      away(content.offBlockAt, -2 * DAY),
      away(content.offBlockAt, 2 * DAY),
    );
    const other = near.find((leg) => leg.id !== of?.id && overlap(leg, content));
    if (!other) return;
    const end = other.onBlockAt ?? other.landedAt ?? 'an unknown time';
    throw refused(
      '/offBlockAt',
      `${other.flight} is known to have been on its way from ${other.offBlockAt} to ${end}`,
    );
  }

  private async planOf(tx: Tx, content: LegContent): Promise<string | null> {
    if (content.ending === 'withdrawn') return null;
    const { airlineCodes } = readingOf(await tx.operators.current(), await this.dispatch.settings(tx));
    const day = `${content.scheduledOn}T00:00:00.000Z`;
    const flights = await tx.flights.between([content.aircraftId], away(day, 0), away(day, 3 * DAY));
    return planOfLeg(content, flights, airlineCodes);
  }
}

function away(at: string, milliseconds: number): string {
  return new Date(Date.parse(at) + milliseconds).toISOString();
}

function refused(pointer: string, reason: string): Problem {
  return new Problem('invalid-input', reason, { errors: [{ pointer, reason }] });
}
