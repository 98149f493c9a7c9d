import { DataSource } from 'typeorm';
import { migrations } from './migrations/index.js';
import { PreparedClient } from './prepared-client.js';
import { tables } from './rows/index.js';
import { PlainNames } from './rows/naming.js';

export interface PoolOptions {
  /** Most connections held at once. */
  connections?: number;
}

/** The one place where TypeORM is set up. The schema comes from migrations alone; it is never synchronised. */
export function dataSource(url: string, { connections = 10 }: PoolOptions = {}): DataSource {
  return new DataSource({
    type: 'postgres',
    url,
    applicationName: 'proviso',
    entities: tables,
    migrations,
    migrationsTableName: 'migration',
    migrationsTransactionMode: 'each',
    namingStrategy: new PlainNames(),
    synchronize: false,
    installExtensions: false,
    extra: {
      max: connections,
      Client: PreparedClient,
      connectionTimeoutMillis: 10_000,
      // Questions that do not wait for each other go out together: what costs is the waiting, not the questions.
      pipeline: true,
      // A transaction forgotten by a hanging request would hold aircraft, and the sealer behind them, for ever.
      idle_in_transaction_session_timeout: 60_000,
    },
    poolErrorHandler: () => undefined,
  });
}
