/** What the operator no longer has to keep. The list deletes nothing: the record of this program never is. */
import { Inject, Injectable } from '@nestjs/common';
import type { HoldKind, Tx } from '#store';
import { defectNumber } from '../defects/views.js';
import { CLOCK, type Clock } from '../http/tokens.js';
import { eraseLeaversSettled, monthsAfter, monthsKept, monthsOf } from '../people/kept-until.js';
import { HoldsService } from './keeping/holds.service.js';

const MOST = 500;
const SAYS =
  'This is a list and deletes nothing. The record is never deleted; the personal data of a person who is listed may be erased, signed.';
const SAYS_ERASES =
  'This is a list and deletes nothing. The record is never deleted; the program itself erases the personal data of people who left, as settled, once nothing of them has to be kept.';

@Injectable()
export class RetentionService {
  constructor(
    @Inject(CLOCK) private readonly now: Clock,
    private readonly holds: HoldsService,
  ) {}

  /** @param unnoted of closed items those alone that were not noted yet */
  async list(tx: Tx, { unnoted = false } = {}) {
    const at = this.now();
    const operator = await tx.operators.current();
    const months = { log: monthsOf(operator, 'retentionLog'), work: monthsOf(operator, 'retentionWork') };
    const holds = await this.holds.list(tx);
    const noted = new Map((await tx.keeping.noted()).map((one) => [`${one.kind} ${one.subjectId}`, one.notedAt]));
    const past = (kind: HoldKind, id: string, since: string, period: number) => {
      const keptUntil = monthsAfter(since, period);
      const held = holds.some((hold) => hold.kind === kind && hold.subject === id);
      const notedAt = noted.get(`${kind} ${id}`) ?? null;
      return keptUntil <= at ? [{ id, since, keptUntil, notedAt, held }] : [];
    };
    const fleet = await tx.aircraft.list();
    const lastEntries = await tx.record.lastOfEachAircraft();
    const closed = await (unnoted ? tx.defects.closedUnnoted(at, MOST) : tx.defects.closedBefore(at, MOST));
    const people = await tx.people.members();
    const erased = await tx.people.erasedOnes();
    const erasesLeavers = eraseLeaversSettled(operator);
    return {
      at,
      months,
      says: erasesLeavers ? SAYS_ERASES : SAYS,
      erasesLeavers,
      holds,
      logs: lastEntries.flatMap(({ id, registration, at: last }) =>
        past('aircraft', id, last, months.log).map((kept) => ({ registration, ...kept })),
      ),
      defects: closed.flatMap((row) => {
        const aircraft = fleet.find(({ id }) => id === row.aircraftId);
        if (!aircraft || row.closedAt === null) return [];
        const number = defectNumber(aircraft, row);
        return past('defect', row.id, row.closedAt, months.work).map((kept) => ({ number, ...kept }));
      }),
      people: people.flatMap(({ personId, name, reference, validUntil }) =>
        validUntil === null || erased.has(reference)
          ? []
          : past('person', personId, validUntil, monthsKept(operator)).map((kept) => ({ name, reference, ...kept })),
      ),
    };
  }
}
