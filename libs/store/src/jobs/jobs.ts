import { setTimeout as sleep } from 'node:timers/promises';
import PgBoss from 'pg-boss';
import type { Transaction } from '../transaction.js';
import { JOBS_SCHEMA, type JobsOf, type Queue } from './queues.js';

export interface JobsOptions {
  /** Seconds after which a job of a server that died is given to another one. */
  leaseSeconds?: number;
  /** Told of what went wrong beside any job; it goes on all the same. */
  onError?: (error: unknown) => void;
}

export interface JobAsked<Q extends Queue> {
  /** Of one key at most one job waits. */
  key: string;
  data: JobsOf[Q];
  afterSeconds?: number;
}

/** A job at hand. */
export interface Job<Q extends Queue> {
  data: JobsOf[Q];
  /** Counts it as done; given the transaction in which it was done, both stand or neither does. */
  done: (tx?: Transaction) => Promise<void>;
}

export interface Working {
  /** How many at once. */
  atOnce: number;
  /** Pause after nothing was found. */
  everyMs: number;
}

/** The job queue as one server sees it: jobs are put in the transaction that makes them needed, and one server takes each. */
export class Jobs {
  private readonly stopping = new AbortController();
  private readonly workers: Promise<void>[] = [];

  private constructor(
    private readonly boss: PgBoss,
    readonly leaseSeconds: number,
    private readonly onError: (error: unknown) => void,
  ) {}

  /** @param appUrl signs in as `proviso_app`; the owner has set the queue up */
  static async open(
    appUrl: string,
    { leaseSeconds = 60, onError = () => undefined }: JobsOptions = {},
  ): Promise<Jobs> {
    const boss = new PgBoss({
      connectionString: appUrl,
      application_name: 'proviso jobs',
      schema: JOBS_SCHEMA,
      max: 2,
      migrate: false,
      schedule: false,
      maintenanceIntervalSeconds: Math.max(1, Math.floor(leaseSeconds / 2)),
    });
    boss.on('error', onError);
    await boss.start();
    return new Jobs(boss, leaseSeconds, onError);
  }

  async put<Q extends Queue>(tx: Transaction, queue: Q, asked: readonly JobAsked<Q>[]): Promise<void> {
    if (asked.length === 0) return;
    const jobs = asked.map(({ key, data, afterSeconds = 0 }) => ({
      name: queue,
      data,
      singletonKey: key,
      startAfter: String(afterSeconds),
      expireInSeconds: this.leaseSeconds,
    }));
    await this.boss.insert(jobs as PgBoss.JobInsert[], { db: through(tx) } as PgBoss.InsertOptions);
  }

  /** Puts a job that is wanted once in so many seconds, however many servers ask for it; for each key by itself. */
  async putEvery<Q extends Queue>(queue: Q, data: JobsOf[Q], seconds: number, key = ''): Promise<void> {
    const every = { singletonKey: key, singletonSeconds: seconds };
    await this.boss.send(queue, data, { ...every, expireInSeconds: this.leaseSeconds });
  }

  /** Takes jobs until stopped. One that throws is given out again after a while. */
  work<Q extends Queue>(queue: Q, { atOnce, everyMs }: Working, handle: (job: Job<Q>) => Promise<void>): void {
    for (let worker = 0; worker < atOnce; worker += 1) this.workers.push(this.take(queue, everyMs, handle));
  }

  /** Does something again and again until stopped. */
  repeat(everyMs: number, work: () => Promise<void>): void {
    this.workers.push(
      (async () => {
        while (!this.stopping.signal.aborted) {
          await work().catch(this.onError);
          await this.pause(everyMs);
        }
      })(),
    );
  }

  /** Lets what is at hand come to its end. */
  async stop(): Promise<void> {
    this.stopping.abort();
    await Promise.all(this.workers);
    await this.boss.stop({ graceful: false });
  }

  // The library's own worker does not wait for the end of a job to be written; an error there would end the process.
  private async take<Q extends Queue>(
    queue: Q,
    everyMs: number,
    handle: (job: Job<Q>) => Promise<void>,
  ): Promise<void> {
    while (!this.stopping.signal.aborted) {
      const [found] = await this.boss.fetch<JobsOf[Q]>(queue).catch(this.none);
      if (found === undefined) await this.pause(everyMs);
      else await this.handled(queue, found, handle);
    }
  }

  private async handled<Q extends Queue>(
    queue: Q,
    { id, data }: PgBoss.Job<JobsOf[Q]>,
    handle: (job: Job<Q>) => Promise<void>,
  ): Promise<void> {
    try {
      await handle({
        data,
        done: async (tx) => void (await this.boss.complete(queue, id, {}, tx ? { db: through(tx) } : {})),
      });
    } catch (error) {
      this.onError(error);
      await this.boss.fail(queue, id, { message: String(error) }).catch(this.onError);
    }
  }

  private readonly none = (error: unknown): never[] => {
    this.onError(error);
    return [];
  };

  private async pause(milliseconds: number): Promise<void> {
    await sleep(milliseconds, undefined, { signal: this.stopping.signal }).catch(() => undefined);
  }
}

/** The library's questions, asked in this transaction. */
function through(tx: Transaction): PgBoss.Db {
  return { executeSql: async (text, values) => ({ rows: await tx.query(text, values) }) };
}
