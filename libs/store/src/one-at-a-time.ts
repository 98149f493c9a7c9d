import { Client } from 'pg';

/** What programs that share a database do one after the other; the numbers mean nothing else in it. */
const LOCKS = { operators: 7_110_003 } as const;

/** Waits until no other program does the same on this database, then does it. A killed one lets go at once. */
export async function oneAtATime<T>(ownerUrl: string, what: keyof typeof LOCKS, work: () => Promise<T>): Promise<T> {
  const holder = new Client({ connectionString: ownerUrl });
  await holder.connect();
  try {
    await holder.query('select pg_advisory_lock($1)', [LOCKS[what]]);
    return await work();
  } finally {
    await holder.end();
  }
}
