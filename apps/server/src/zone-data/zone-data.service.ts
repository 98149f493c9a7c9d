import { createHash } from 'node:crypto';
import { Inject, Injectable } from '@nestjs/common';
import type { Store, Tx, ZoneDifferenceRow } from '#store';
import type { Calling } from '../defects/acting.js';
import { changeColumns, livesOf } from '../defects/defect-book.js';
import { defectNumber } from '../defects/views.js';
import { sayInstant } from '../deferrals/say-time.js';
import type { SignBody } from '../http/fields.js';
import { once } from '../http/once.js';
import { Problem } from '../http/problem.js';
import { CLOCK, type Clock, STORE, TZDB } from '../http/tokens.js';
import { keepSignature, signedPart } from '../people/kept-signature.js';
import { SignInService } from '../people/sign-in.service.js';

/** What newer time-zone data reads otherwise, shown to people and confirmed by one of them. */
@Injectable()
export class ZoneDataService {
  constructor(
    @Inject(STORE) private readonly store: Store,
    @Inject(CLOCK) private readonly now: Clock,
    @Inject(TZDB) private readonly tzdb: string,
    private readonly signIn: SignInService,
  ) {}

  async view(tx: Tx): Promise<object> {
    const { tzdb: newest } = await tx.operators.current();
    const rows = await tx.zoneData.all();
    return {
      at: this.now(),
      tzdb: this.tzdb,
      newest,
      older: newest !== null && newest > this.tzdb,
      differences: await Promise.all(rows.map((row) => lineOf(tx, row))),
    };
  }

  async statement(tx: Tx): Promise<{ act: string; statement: string }> {
    return { act: 'confirm-zone-data', statement: statementOf(await openOnes(tx)) };
  }

  async confirm(calling: Calling, sign: SignBody): Promise<object> {
    const { session, request, reply } = calling;
    const proof = await this.signIn.proveAgain(session, sign, request);
    return once(this.store, session, request, reply, async (tx) => {
      const open = await openOnes(tx);
      const statement = statementOf(open);
      if (open.length === 0) throw new Problem('nothing-to-confirm', 'No deadline reads otherwise.');
      if (sign.statement !== statement)
        throw new Problem('statement-not-shown', 'The statement differs from the one to be signed.', { statement });
      const now = this.now();
      const person = session.personId;
      const role = session.roles[0] ?? 'quality';
      const given = { person, role, ...proof, authorisation: { roles: session.roles }, signedAt: now, statement };
      const entry = await tx.record.append({
        who: person,
        authorisation: null,
        organisation: null,
        what: 'zone-data.confirmed',
        aircraft: null,
        times: { enteredAt: now },
        payload: { differences: open.map(recorded), signature: signedPart(given) },
      });
      await keepSignature(tx, entry, given);
      await this.putInForce(tx, open, person, now);
      return { status: 200, body: await this.view(tx) };
    });
  }

  private async putInForce(tx: Tx, open: readonly ZoneDifferenceRow[], person: string, now: string): Promise<void> {
    const ids = [...new Set(open.map(({ defectId }) => defectId))].sort();
    for (const id of ids) await tx.aircraft.lockOfDefect(id);
    for (const row of open) await tx.zoneData.confirm(row, person, now);
    for (const id of ids) {
      const row = await tx.defects.get(id);
      const [opened] = row ? await livesOf(tx, [row]) : [];
      if (opened) await changeColumns(tx, opened.row, opened.life);
    }
  }
}

async function openOnes(tx: Tx): Promise<ZoneDifferenceRow[]> {
  return (await tx.zoneData.all()).filter(({ confirmedAt }) => confirmedAt === null);
}

async function lineOf(tx: Tx, row: ZoneDifferenceRow): Promise<object> {
  const defect = await tx.defects.get(row.defectId);
  const aircraft = defect ? await tx.aircraft.get(defect.aircraftId) : null;
  const { zone, tzdbBefore, tzdbAfter, endsBefore, endsAfter, foundAt, confirmedAt } = row;
  const stricter = Date.parse(endsAfter) < Date.parse(endsBefore) ? endsAfter : endsBefore;
  return {
    defect: row.defectId,
    number: defect && aircraft ? defectNumber(aircraft, defect) : '',
    zone,
    tzdbBefore,
    tzdbAfter,
    endsBefore,
    endsAfter,
    foundAt,
    confirmedAt,
    inForce: confirmedAt === null ? stricter : endsAfter,
  };
}

function recorded({ defectId, zone, tzdbBefore, tzdbAfter, endsBefore, endsAfter }: ZoneDifferenceRow): object {
  return { defect: defectId, zone, tzdbBefore, tzdbAfter, endsBefore, endsAfter };
}

/** Bound to the whole list by its digest: whatever is found until it is signed is shown again. */
function statementOf(open: readonly ZoneDifferenceRow[]): string {
  const digest = createHash('sha256')
    .update(JSON.stringify(open.map(recorded)))
    .digest('hex')
    .slice(0, 16);
  const versions = [...new Set(open.map(({ tzdbAfter }) => tzdbAfter))].join(', ');
  const [first] = open;
  const example = first
    ? ` The first of them ends ${sayInstant(first.endsAfter)}, not ${sayInstant(first.endsBefore)}.`
    : '';
  return `I have read the ${open.length} open deadlines that end at another instant by time-zone data ${versions} (list ${digest}), and confirm that they end as this data says.${example} Their last days stay as they were signed.`;
}
