import { Inject, Injectable } from '@nestjs/common';
import type { HoldKind, HoldRow, Store, Tx } from '#store';
import { defectNumber } from '../../defects/views.js';
import type { Called } from '../../http/called.js';
import { once } from '../../http/once.js';
import { Problem } from '../../http/problem.js';
import { CLOCK, type Clock, STORE } from '../../http/tokens.js';
import { refuseNameIn } from '../../people/erasures.service.js';
import type { HoldBody, ReleaseHoldBody } from './holds.bodies.js';

/** What is kept beyond its period until somebody releases it. */
@Injectable()
export class HoldsService {
  constructor(
    @Inject(STORE) private readonly store: Store,
    @Inject(CLOCK) private readonly now: Clock,
  ) {}

  /** Those that stand, each with the name of what is held as it is known today. */
  async list(tx: Tx): Promise<HoldView[]> {
    const holds = await tx.keeping.holds();
    const views: HoldView[] = [];
    const names = await tx.people.known(holds.map(({ placedBy }) => placedBy));
    for (const hold of holds) {
      const { id, kind, subjectId: subject, reason, placedAt, placedBy } = hold;
      const name = (await nameOf(tx, kind, subject)) ?? subject;
      views.push({ id, kind, subject, name, reason, placedAt, by: names.get(placedBy)?.name ?? '(name erased)' });
    }
    return views;
  }

  place({ session, request, reply }: Omit<Called, 'id'>, { kind, subject, reason }: HoldBody): Promise<object> {
    return once(this.store, session, request, reply, async (tx) => {
      if ((await nameOf(tx, kind, subject)) === null)
        throw new Problem('not-found', `There is no ${kind} ${subject} here.`);
      const held = await tx.keeping.holds();
      if (held.some((one) => one.kind === kind && one.subjectId === subject)) {
        throw new Problem('under-hold', 'It is held already.');
      }
      await refuseNamed(tx, kind, subject, reason);
      const now = this.now();
      await tx.keeping.hold({ kind, subjectId: subject, reason, placedAt: now, placedBy: session.personId });
      await this.recorded(tx, session.personId, 'hold.placed', {
        kind,
        subject: await recordedAs(tx, kind, subject),
        reason,
      });
      return { status: 201, body: { holds: await this.list(tx) } };
    });
  }

  release({ session, request, reply, id }: Called, { reason }: ReleaseHoldBody): Promise<object> {
    return once(this.store, session, request, reply, async (tx) => {
      const hold = await tx.keeping.toRelease(id);
      if (hold === null || hold.releasedAt !== null) throw new Problem('not-found', 'Nothing is held under this id.');
      const { kind, subjectId } = hold;
      await refuseNamed(tx, kind, subjectId, reason);
      await tx.keeping.release(id, hold.version, releasedBy(session.personId, reason, this.now()));
      await this.recorded(tx, session.personId, 'hold.released', {
        kind,
        subject: await recordedAs(tx, kind, subjectId),
        reason,
      });
      return { status: 200, body: { holds: await this.list(tx) } };
    });
  }

  private async recorded(tx: Tx, who: string, what: string, payload: object): Promise<void> {
    const times = { enteredAt: this.now() };
    await tx.record.append({ who, authorisation: null, organisation: null, what, aircraft: null, times, payload });
  }
}

export interface HoldView {
  id: string;
  kind: HoldKind;
  subject: string;
  name: string;
  reason: string;
  placedAt: string;
  by: string;
}

function releasedBy(releasedBy: string, releasedBecause: string, releasedAt: string): Partial<HoldRow> {
  return { releasedAt, releasedBy, releasedBecause };
}

/** What is said of a person stands in the record in clear, where no erasure reaches it. */
async function refuseNamed(tx: Tx, kind: HoldKind, subject: string, reason: string): Promise<void> {
  const member = kind === 'person' ? await tx.people.member(subject) : null;
  if (member) refuseNameIn(reason, member);
}

/** The record names a person by reference alone. */
async function recordedAs(tx: Tx, kind: HoldKind, subject: string): Promise<string> {
  return kind === 'person' ? tx.people.referenceOf(subject) : subject;
}

async function nameOf(tx: Tx, kind: HoldKind, subject: string): Promise<string | null> {
  if (kind === 'person') return (await tx.people.member(subject))?.name ?? null;
  if (kind === 'aircraft') return (await tx.aircraft.get(subject))?.registration ?? null;
  const defect = await tx.defects.get(subject);
  const aircraft = defect ? await tx.aircraft.get(defect.aircraftId) : null;
  return defect && aircraft ? defectNumber(aircraft, defect) : null;
}
