import { withClient } from './with-client.js';

/** Tables that a refused request may touch: somebody who failed to sign is counted, somebody who came in has a session. */
const OF_SIGNING_IN = ['challenge', 'sign_in_attempt', 'session'];

/**
 * Every table of the database with its number of rows and a hash over all of them, so that a test can say that nothing
 * changed. It waits until the record is sealed: sealing goes on by itself.
 */
export async function databaseDigest(adminUrl: string): Promise<Record<string, string>> {
  return withClient(adminUrl, async (client) => {
    const one = async (sql: string): Promise<string> => {
      const { rows } = await client.query<{ found: string }>(sql);
      return rows.map(({ found }) => found).join(' ');
    };
    while ((await one('select count(*)::text as found from record_pending')) !== '0') await pause();
    const tables = await one(
      `select table_name as found from information_schema.tables
       where table_schema = 'public' and table_type = 'BASE TABLE' order by 1`,
    );
    const digest: Record<string, string> = {};
    for (const table of tables.split(' ').filter((name) => !OF_SIGNING_IN.includes(name))) {
      digest[table] = await one(
        `select count(*) || ' ' || coalesce(md5(string_agg(t::text, '|' order by t::text)), '-') as found from ${table} t`,
      );
    }
    return digest;
  });
}

function pause(): Promise<void> {
  return new Promise((go) => setTimeout(go, 10));
}
