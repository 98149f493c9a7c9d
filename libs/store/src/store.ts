import { setTimeout as sleep } from 'node:timers/promises';
import type { ClientBase } from 'pg';
import type { DataSource, EntityManager } from 'typeorm';
import { dataSource, type PoolOptions } from './data-source.js';
import { tellRows } from './record/tell-rows.js';
import { Identity } from './identity.js';
import { Means } from './means.js';
import { type RecordFinding, verifyIn } from './record/verify.js';
import { Acts } from './repositories/acts.repository.js';
import { Fleet } from './repositories/aircraft.repository.js';
import { CalendarFeeds } from './repositories/calendar-feeds.repository.js';
import { Cards } from './repositories/cards.repository.js';
import { Concurrences } from './repositories/concurrences.repository.js';
import { Defects } from './repositories/defects.repository.js';
import { EngineCounts } from './repositories/engine-counts.repository.js';
import { Extensions } from './repositories/extensions.repository.js';
import { Facts } from './repositories/facts.repository.js';
import { Flights } from './repositories/flights.repository.js';
import { FreeText } from './repositories/free-text.repository.js';
import { Idempotency } from './repositories/idempotency.repository.js';
import { Invitations } from './repositories/invitations.repository.js';
import { Judgements } from './repositories/judgements.repository.js';
import { Keeping } from './repositories/keeping.repository.js';
import { Legs } from './repositories/legs.repository.js';
import { MelRevisions } from './repositories/mel.repository.js';
import { Movements } from './repositories/movements.repository.js';
import { Operators } from './repositories/operators.repository.js';
import { People } from './repositories/people.repository.js';
import { RecordProofs } from './repositories/record-proofs.repository.js';
import { RowsForRecord } from './repositories/record-rows.repository.js';
import { RecordOfOperator } from './repositories/record.repository.js';
import { Register } from './repositories/register.repository.js';
import { ReminderAddresses } from './repositories/reminder-addresses.repository.js';
import { Reminders } from './repositories/reminders.repository.js';
import { Signatures } from './repositories/signatures.repository.js';
import { StationCovers } from './repositories/station-covers.repository.js';
import { Verdicts } from './repositories/verdicts.repository.js';
import { ZoneData } from './repositories/zone-data.repository.js';
import type { AircraftRow } from './rows/aircraft.row.js';
import { connectionOf, Transaction } from './transaction.js';

/** One transaction for one operator: one repository for each noun, all on the same connection. */
export class Tx extends Transaction {
  readonly operators = new Operators(this);
  readonly people = new People(this);
  readonly aircraft = new Fleet(this);
  readonly mel = new MelRevisions(this);
  readonly flights = new Flights(this);
  readonly movements = new Movements(this);
  readonly legs = new Legs(this);
  readonly engineCounts = new EngineCounts(this);
  readonly facts = new Facts(this);
  readonly cards = new Cards(this);
  readonly concurrences = new Concurrences(this);
  readonly defects = new Defects(this);
  readonly acts = new Acts(this);
  readonly extensions = new Extensions(this);
  readonly calendarFeeds = new CalendarFeeds(this);
  readonly reminderAddresses = new ReminderAddresses(this);
  readonly reminders = new Reminders(this);
  readonly invitations = new Invitations(this);
  readonly register = new Register(this);
  readonly judgements = new Judgements(this);
  readonly signatures = new Signatures(this);
  readonly stationCovers = new StationCovers(this);
  readonly verdicts = new Verdicts(this);
  readonly zoneData = new ZoneData(this);
  readonly freeText = new FreeText(this);
  readonly keeping = new Keeping(this);
  readonly idempotency = new Idempotency(this);
  readonly proofs = new RecordProofs(this);
  readonly rowsForRecord = new RowsForRecord(this);
  readonly record: RecordOfOperator;

  constructor(
    manager: EntityManager,
    connection: ClientBase,
    operatorId: string,
    personId: string | null,
    references: Map<string, string>,
  ) {
    super(manager, connection, operatorId, personId);
    this.record = new RecordOfOperator(this, references);
  }
}

/** Whatever hangs for longer is cut off with its connection. */
const LONGEST_WAIT_MS = 5_000;

const uuid = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;

/**
 * For one operator, in a transaction that TypeORM began as the owner and ends itself: whatever was sent is done before it
 * ends, or fails it. The database would roll back what holds a failure, and TypeORM would take that for done.
 */
export async function inTransactionOf(
  manager: EntityManager,
  operatorId: string,
  work: (tx: Tx) => Promise<void>,
): Promise<void> {
  await manager.query("select set_config('app.operator', $1, true)", [operatorId]);
  const tx = new Tx(manager, await connectionOf(manager), operatorId, null, new Map());
  try {
    await work(tx);
    await tx.settled();
  } catch (error) {
    throw await tx.firstFailure(error);
  } finally {
    tx.end();
  }
}

/** The database as the server sees it. Open one for the whole process. */
export class Store {
  readonly identity: Identity;
  readonly means: Means;
  private readonly references = new Map<string, string>();
  /** One for each transaction that runs; settled, without an answer, when it is over. */
  private readonly running = new Set<Promise<void>>();

  constructor(private readonly source: DataSource) {
    this.identity = new Identity(source);
    this.means = new Means(source);
  }

  /**
   * Runs `work` in one transaction in which the database shows the rows of this operator alone. It commits when `work`
   * returns and leaves nothing behind when it throws; the connection goes back to the pool knowing neither operator
   * nor person.
   * @param personId who acts; null when the program itself does
   * @param isolation `REPEATABLE READ` where everything is to be seen as it stood at one moment
   */
  withOperator<T>(
    operatorId: string,
    personId: string | null,
    work: (tx: Tx) => Promise<T>,
    isolation?: 'REPEATABLE READ',
  ): Promise<T> {
    for (const id of [operatorId, personId]) {
      if (id !== null && !uuid.test(id)) return Promise.reject(new TypeError(`${JSON.stringify(id)} is not a key.`));
    }
    const running = this.inTransaction(operatorId, personId, work, isolation);
    const over = running.then(
      () => undefined,
      () => undefined,
    );
    this.running.add(over);
    void over.then(() => this.running.delete(over));
    return running;
  }

  /** Every question is sent without waiting for the beginning of the transaction: none is answered outside of it. */
  private async inTransaction<T>(
    operatorId: string,
    personId: string | null,
    work: (tx: Tx) => Promise<T>,
    isolation?: 'REPEATABLE READ',
  ): Promise<T> {
    const runner = this.source.createQueryRunner();
    const connection = await connectionOf(runner.manager);
    const tx = new Tx(runner.manager, connection, operatorId, personId, this.references);
    try {
      const begun = [
        connection.query(`START TRANSACTION${isolation ? ` ISOLATION LEVEL ${isolation}` : ''}`),
        connection.query("select set_config('app.operator', $1, true), set_config('app.person', $2, true)", [
          operatorId,
          personId ?? '',
        ]),
      ];
      const [result] = await Promise.all([work(tx), ...begun]);
      // What was sent is among what is told.
      await tx.settled();
      if (tx.written.size > 0) await tellRows(tx, tx.written);
      await tx.settled();
      tx.end();
      await commit(connection);
      return result;
    } catch (error) {
      tx.end();
      const first = await tx.firstFailure(error);
      // The connection may be what failed; why the work did says more.
      await connection.query('ROLLBACK').catch(() => undefined);
      throw first;
    } finally {
      await runner.release();
    }
  }

  /** Reads the whole record of one operator and compares all of it, seeing one moment of the database throughout. */
  verifyRecordOf(operatorId: string): Promise<RecordFinding> {
    return this.source.transaction('REPEATABLE READ', (manager) => verifyIn(manager, operatorId, operatorId));
  }

  /** Every operator in this database, by code: for what the program does by itself, one operator at a time. */
  operatorsServed(): Promise<{ id: string; code: string }[]> {
    return this.source.query('select id, code from operators_served()');
  }

  /** Whether the database answers. */
  async isUp(): Promise<boolean> {
    return this.source.query('select 1').then(
      () => true,
      () => false,
    );
  }

  /** Once what runs has ended: a read that its asker no longer waits for is let through, not broken off. */
  async close(): Promise<void> {
    const late = sleep(LONGEST_WAIT_MS, undefined, { ref: false });
    while (this.running.size > 0) {
      if ((await Promise.race([Promise.all(this.running).then(() => 'over'), late])) !== 'over') break;
    }
    await this.source.destroy();
  }
}

/** The database rolls back what it is asked to commit after a failed question, and does not call that an error. */
async function commit(connection: ClientBase): Promise<void> {
  const { command } = await connection.query('COMMIT');
  if (command !== 'COMMIT') throw new Error('A question had failed, so nothing of the transaction was kept.');
}

/** @param appUrl signs in as `proviso_app` */
export async function openStore(appUrl: string, options: PoolOptions = {}): Promise<Store> {
  return new Store(await dataSource(appUrl, options).initialize());
}

/**
 * Takes the aircraft for the rest of the transaction. Every act that can change what may be flown with it does this
 * first: two different defects deferred at once would otherwise each be judged without the other.
 * @returns the aircraft as it stands now that it is ours; null when this operator has none such
 */
export function lockAircraft(tx: Tx, aircraftId: string): Promise<AircraftRow | null> {
  return tx.aircraft.lock(aircraftId);
}
