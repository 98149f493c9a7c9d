/** What the operator no longer has to keep. The list deletes nothing: the record of this program never is. */
import { Inject, Injectable } from '@nestjs/common';
import type { Tx } from '#store';
import { defectNumber } from '../defects/views.js';
import { CLOCK, type Clock } from '../http/tokens.js';
import { monthsAfter, monthsKept, monthsOf } from '../people/kept-until.js';

const MOST = 500;
const SAYS =
  'This is a list and deletes nothing. The record is never deleted; the personal data of a person who is listed may be erased, signed.';

@Injectable()
export class RetentionService {
  constructor(@Inject(CLOCK) private readonly now: Clock) {}

  async list(tx: Tx): Promise<object> {
    const at = this.now();
    const operator = await tx.operators.current();
    const months = { log: monthsOf(operator, 'retentionLog'), work: monthsOf(operator, 'retentionWork') };
    const past = (since: string, period: number) => {
      const keptUntil = monthsAfter(since, period);
      return keptUntil <= at ? [{ since, keptUntil }] : [];
    };
    const fleet = await tx.aircraft.list();
    const lastEntries = await tx.record.lastOfEachAircraft();
    const closed = await tx.defects.closedBefore(at, MOST);
    const people = await tx.people.members();
    return {
      at,
      months,
      says: SAYS,
      logs: lastEntries.flatMap(({ id, registration, at: last }) =>
        past(last, months.log).map((kept) => ({ id, registration, ...kept })),
      ),
      defects: closed.flatMap((row) => {
        const aircraft = fleet.find(({ id }) => id === row.aircraftId);
        if (!aircraft || row.closedAt === null) return [];
        const number = defectNumber(aircraft, row);
        return past(row.closedAt, months.work).map((kept) => ({ id: row.id, number, ...kept }));
      }),
      people: people.flatMap(({ personId: id, name, reference, validUntil }) =>
        validUntil === null
          ? []
          : past(validUntil, monthsKept(operator)).map((kept) => ({ id, name, reference, ...kept })),
      ),
    };
  }
}
