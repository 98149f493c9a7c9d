import PgBoss from 'pg-boss';
import { Client } from 'pg';
import { appRole } from '../roles/app-role.js';
import { JOBS_SCHEMA, QUEUES } from './queues.js';

const YEAR_MINUTES = 365 * 24 * 60;
const UNDEFINED_TABLE = '42P01';

/**
 * Brings the tables of the job queue to what its library needs, as their owner: the library has migrations of its own,
 * and makes a partition for each queue. The server's role may then read and write jobs, and owns and makes nothing. Jobs
 * carry keys alone, so they stand outside the rows of operators; what a key leads to is still shown to its operator only.
 */
export async function setUpJobs(ownerUrl: string): Promise<void> {
  const owner = new Client({ connectionString: ownerUrl });
  await owner.connect();
  try {
    if (await isSetUp(owner)) return;
    await makeQueues(ownerUrl);
    await owner.query(`
      grant usage on schema ${JOBS_SCHEMA} to ${appRole};
      grant select on ${JOBS_SCHEMA}.queue, ${JOBS_SCHEMA}.schedule to ${appRole};
      grant select, update on ${JOBS_SCHEMA}.version to ${appRole};
      grant select, insert, update, delete on ${JOBS_SCHEMA}.job, ${JOBS_SCHEMA}.archive to ${appRole};
      revoke execute on function ${JOBS_SCHEMA}.create_queue, ${JOBS_SCHEMA}.delete_queue from public`);
  } finally {
    await owner.end();
  }
}

/** Takes them away again, with every job. */
export async function dropJobs(ownerUrl: string): Promise<void> {
  const owner = new Client({ connectionString: ownerUrl });
  await owner.connect();
  await owner.query(`drop schema if exists ${JOBS_SCHEMA} cascade`).finally(() => owner.end());
}

async function makeQueues(ownerUrl: string): Promise<void> {
  const boss = new PgBoss({
    connectionString: ownerUrl,
    schema: JOBS_SCHEMA,
    max: 1,
    supervise: false,
    schedule: false,
  });
  await boss.start();
  try {
    for (const queue of QUEUES) {
      // `short`: of one key at most one job waits. Retries are for servers that died; what was tried in vain asks anew.
      const lasting = { retryLimit: 1_000_000, retryDelay: 30, retentionMinutes: YEAR_MINUTES };
      await boss.createQueue(queue, { name: queue, policy: 'short', ...lasting });
    }
  } finally {
    await boss.stop({ graceful: false });
  }
}

/** Every queue is there under the library's present version, and the server's role may use it. */
async function isSetUp(owner: Client): Promise<boolean> {
  try {
    const wanted = Number(
      /version\(version\) VALUES \('(\d+)'\)/.exec(PgBoss.getConstructionPlans(JOBS_SCHEMA))?.[1],
    );
    const { rows } = await owner.query<{ there: boolean }>(
      `select (select version from ${JOBS_SCHEMA}.version) = $1
         and (select count(*) from ${JOBS_SCHEMA}.queue where name = any($2)) = cardinality($2)
         and has_table_privilege($3, '${JOBS_SCHEMA}.job', 'insert') as there`,
      [wanted, [...QUEUES], appRole],
    );
    return rows[0]?.there === true;
  } catch (error) {
    if ((error as { code?: string }).code === UNDEFINED_TABLE) return false;
    throw error;
  }
}
