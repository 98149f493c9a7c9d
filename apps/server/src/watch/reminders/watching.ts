import type { Store } from '#store';
import type { ConfirmationsService } from './confirmations.service.js';
import type { DeliveryService } from './delivery.service.js';
import type { KeepingService } from '../../record/keeping/keeping.service.js';
import type { NoticingService } from './noticing.service.js';
import type { WatchOptions } from './watch-options.js';

const TEN_MINUTES = 600;
/** The longest that the queue keeps a job to once; what was noted in the morning is not noted again. */
const HALF_A_DAY = 43_200;
const DELIVERIES_AT_ONCE = 4;

interface Doing {
  noticing: NoticingService;
  delivery: DeliveryService;
  confirmations: ConfirmationsService;
  keeping: KeepingService;
}

/**
 * Starts what this server does by itself: look at open deferrals every so often, twice a day at what is past its period of
 * keeping, and hand reminders over. However many
 * servers do so on one database, each look and each reminder is taken by one of them.
 */
export function startWatching(
  store: Store,
  { jobs, lookEverySeconds = TEN_MINUTES, everyMs = 1000 }: WatchOptions,
  { noticing, delivery, confirmations, keeping }: Doing,
): void {
  jobs.work('look', { atOnce: 1, everyMs: 2 * everyMs }, async ({ done }) => {
    for (const { id } of await store.operatorsServed()) {
      await store.withOperator(id, null, (tx) => jobs.put(tx, 'notice', [{ key: id, data: { operatorId: id } }]));
      await jobs.putEvery('keep', { operatorId: id }, HALF_A_DAY, id);
    }
    await done();
  });
  jobs.work('notice', { atOnce: 1, everyMs: 2 * everyMs }, async ({ data, done }) => {
    await noticing.look(data.operatorId);
    await done();
  });
  jobs.work('keep', { atOnce: 1, everyMs: 2 * everyMs }, async ({ data, done }) => {
    await keeping.look(data.operatorId);
    await done();
  });
  jobs.work('confirm', { atOnce: 1, everyMs }, (job) => confirmations.send(job));
  jobs.work('deliver', { atOnce: DELIVERIES_AT_ONCE, everyMs }, (job) => delivery.deliver(job));
  // Asked for oftener than it is due: the queue keeps it to once.
  jobs.repeat(Math.min(30, lookEverySeconds) * 1000, () => jobs.putEvery('look', {}, lookEverySeconds));
}
