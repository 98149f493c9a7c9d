import { Inject, Injectable } from '@nestjs/common';
import { type HeadExport, newId, type NoticedReminder, type ReminderAddressRow, type Store, type Tx } from '#store';
import { CLOCK, type Clock, HEADS, STORE, WATCH } from '../../http/tokens.js';
import { Problem } from '../../http/problem.js';
import { ErasuresService } from '../../people/erasures.service.js';
import { eraseLeaversSettled } from '../../people/kept-until.js';
import type { KeepingContent } from '../../watch/reminders/keeping-content.js';
import type { WatchOptions } from '../../watch/reminders/watch-options.js';
import { RetentionService } from '../retention.service.js';

const KEEPERS = ['quality', 'administrator'];

/** What one look at the periods of keeping came to. */
export interface KeptRound {
  /** Newly past their period. */
  noted: number;
  erased: number;
}

/**
 * Twice a day: what has passed its period of keeping since the last look is noted in the record and told to those who keep it.
 * Where the operator settled so, the personal data of leavers that nothing binds any longer are erased. Nothing else ever is.
 */
@Injectable()
export class KeepingService {
  constructor(
    @Inject(STORE) private readonly store: Store,
    @Inject(CLOCK) private readonly now: Clock,
    @Inject(WATCH) private readonly watch: WatchOptions | null,
    @Inject(HEADS) private readonly heads: Pick<HeadExport, 'signNow'> | null,
    private readonly retention: RetentionService,
    private readonly erasures: ErasuresService,
  ) {}

  async look(operatorId: string): Promise<KeptRound> {
    const round = await this.store.withOperator(operatorId, null, (tx) => this.inOne(tx));
    // A list that cannot be written now is written with the next signed head.
    if (round.erased > 0) await this.heads?.signNow().catch(() => undefined);
    return round;
  }

  private async inOne(tx: Tx): Promise<KeptRound> {
    const at = this.now();
    const { logs, defects, people } = await this.retention.list(tx, { unnoted: true });
    const fresh = {
      logs: await tx.keeping.note(
        'aircraft',
        logs.map(({ id }) => id),
        at,
      ),
      defects: await tx.keeping.note(
        'defect',
        defects.map(({ id }) => id),
        at,
      ),
      people: await tx.keeping.note(
        'person',
        people.map(({ id }) => id),
        at,
      ),
    };
    const references = people.flatMap(({ id, reference }) => (fresh.people.has(id) ? [reference] : []));
    const noted = fresh.logs.size + fresh.defects.size + fresh.people.size;
    if (noted > 0) {
      const payload = { logs: [...fresh.logs], defects: [...fresh.defects], people: references };
      await tx.record.append({ ...byProgram(at), what: 'keeping.passed', payload });
    }
    const erases = eraseLeaversSettled(await tx.operators.current());
    // Nobody is erased in the look that notes them: between two looks somebody may still have it held.
    const told = people.flatMap(({ id }) => (fresh.people.has(id) ? [] : [id]));
    const erased = erases ? await this.eraseUnbound(tx, told, at) : 0;
    if (noted + erased > 0) {
      const { code, name, invented, base } = await tx.operators.current();
      const counts = {
        logs: fresh.logs.size,
        defects: fresh.defects.size,
        people: fresh.people.size,
        erased,
        erases,
      };
      await this.tell(tx, { about: 'keeping', operator: { code, name }, invented, ...counts, base, noticedAt: at });
    }
    return { noted, erased };
  }

  /** Whom anything binds is passed over, and looked at again the next day. */
  private async eraseUnbound(tx: Tx, ids: readonly string[], at: string): Promise<number> {
    let erased = 0;
    for (const id of ids) {
      const member = await this.erasures.erasable(tx, id).catch((error: unknown) => {
        if (error instanceof Problem) return null;
        throw error;
      });
      if (member === null || !(await tx.people.erase(id, at, null))) continue;
      erased += 1;
      const reason =
        'Nothing of the person has to be kept any longer; the operator settled that the program erases then.';
      await tx.record.append({
        ...byProgram(at),
        what: 'person.erased',
        payload: { person: member.reference, reason },
      });
    }
    return erased;
  }

  private async tell(tx: Tx, content: KeepingContent): Promise<void> {
    const told = (await keepersAddresses(tx, content.noticedAt)).map(({ id: addressId }): NoticedReminder => ({
      id: newId(),
      defectId: null,
      term: 1,
      share: 0,
      addressId,
      content,
      noticedAt: content.noticedAt,
      state: 'waiting',
      nextAt: content.noticedAt,
      problem: null,
    }));
    await tx.reminders.notice(told);
    const jobs = told.map(({ id }) => ({ key: id, data: { operatorId: tx.operatorId, reminderId: id } }));
    await this.watch?.jobs.put(tx, 'deliver', jobs);
  }
}

/** Addresses of those who keep the record, and the operator's own: of every aircraft, and confirmed. */
async function keepersAddresses(tx: Tx, at: string): Promise<ReminderAddressRow[]> {
  const keepers = new Set(
    (await tx.people.members())
      .filter(({ validFrom, validUntil }) => validFrom <= at && (validUntil === null || at < validUntil))
      .filter(({ roles }) => roles.some((role) => KEEPERS.includes(role)))
      .map(({ personId }) => personId),
  );
  const inUse = await tx.reminderAddresses.inUse();
  return inUse.filter(
    ({ forAll, personId, aircraftId, confirmedAt }) =>
      (forAll || keepers.has(personId)) && aircraftId === null && confirmedAt !== null,
  );
}

const byProgram = (at: string) => ({
  who: null,
  authorisation: null,
  organisation: null,
  aircraft: null,
  times: { enteredAt: at },
});
