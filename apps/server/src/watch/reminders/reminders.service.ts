import { Inject, Injectable } from '@nestjs/common';
import type { ReminderRow, Tx } from '#store';
import { DispatchService } from '../../dispatch/dispatch.service.js';
import type { Session } from '../../http/session.js';
import { CLOCK, type Clock, WATCH } from '../../http/tokens.js';
import { AT_THE_END } from '../../settings/reminder-settings.js';
import { addressLines, mayEnterForAll } from './address-lines.js';
import { isKeeping, KEEPING_TITLE, keepingSentence } from './keeping-content.js';
import type { ReminderContent } from './reminder-content.js';
import type { WatchOptions } from './watch-options.js';

const SHOWN = 200;
const UNDELIVERED = ['not delivered', 'refused'];

/** What a person sees of reminders: where they go, what was sent, what could not be delivered. */
@Injectable()
export class RemindersService {
  constructor(
    @Inject(CLOCK) private readonly now: Clock,
    @Inject(WATCH) private readonly watch: WatchOptions | null,
    private readonly dispatch: DispatchService,
  ) {}

  async view(tx: Tx, session: Session) {
    const at = this.now();
    const everybody = session.roles.includes('administrator');
    const rows = await tx.reminderAddresses.list(everybody ? null : session.personId);
    const addresses = await addressLines(tx, session, rows, at);
    const to = new Map(rows.map(({ id, label, address }) => [id, `${label} (${address})`]));
    const latest = await tx.reminders.latest([...to.keys()], SHOWN + 1);
    const reminders = latest.slice(0, SHOWN).map((row) => lineOf(row, to.get(row.addressId) ?? ''));
    const { deferral, reminderShares } = await this.dispatch.settings(tx);
    return {
      at,
      base: deferral.base,
      shares: reminderShares.map((percent) => (percent === 0 ? AT_THE_END : `${percent} %`)),
      sends: {
        mail: (this.watch?.mail ?? null) !== null,
        endpoints: this.watch !== null,
        inside: this.watch?.endpointsInside ?? false,
      },
      mayAddForAll: mayEnterForAll(session),
      addresses,
      reminders,
      undelivered: reminders.filter(({ state }) => UNDELIVERED.includes(state)).length,
      more: latest.length > SHOWN,
    };
  }
}

function lineOf(row: ReminderRow, to: string) {
  const { number, title, left } = isKeeping(row.content)
    ? { number: null, title: KEEPING_TITLE, left: keepingSentence(row.content) }
    : (row.content as ReminderContent);
  const { id, defectId, share, addressId, attempts, noticedAt, triedAt, nextAt, sentAt } = row;
  const state = row.state === 'waiting' && row.problem !== null ? ('not delivered' as const) : row.state;
  return {
    id,
    defect: defectId,
    number,
    title,
    share,
    left,
    address: addressId,
    to,
    state,
    words: wordsOf(row),
    noticedAt,
    attempts,
    triedAt,
    nextAt,
    sentAt,
  };
}

function wordsOf({ state, problem, attempts }: ReminderRow): string {
  const tries = attempts === 1 ? 'once' : `${attempts} times`;
  if (state === 'sent') return attempts === 1 ? 'Handed over.' : `Handed over at the ${ordinal(attempts)} attempt.`;
  if (state === 'waiting') return problem === null ? 'About to be sent.' : `Tried ${tries}. ${problem}`;
  return problem ?? '';
}

function ordinal(count: number): string {
  return `${count}${{ 1: 'st', 2: 'nd', 3: 'rd' }[count % 100 > 10 && count % 100 < 14 ? 0 : count % 10] ?? 'th'}`;
}
