import { inject } from 'vitest';
import { createOwner, ensureAppRole } from '#store';
import { withClient } from './with-client.js';

export interface FreshDatabase {
  /** Owns the tables; migrates and seals. */
  ownerUrl: string;
  /** The server's role, `proviso_app`. */
  appUrl: string;
  /** A superuser of the same database: for a test that has to break what nobody else can. */
  adminUrl: string;
  /** Removes it, cutting connections left open. */
  drop(): Promise<void>;
}

let made = 0;

/** A database of its own for a test file: a copy of the one that was migrated once for the whole run. */
export async function freshDatabase(): Promise<FreshDatabase> {
  const { adminUrl, template } = await ask();
  made += 1;
  const name = `${template}_${process.pid}_${made}`;
  await withClient(adminUrl, (client) =>
    client.query(`create database ${name} template ${template} owner proviso_owner`),
  );
  const ownerUrl = await createOwner(adminUrl, name);
  return {
    ownerUrl,
    appUrl: await ensureAppRole(ownerUrl),
    adminUrl: Object.assign(new URL(adminUrl), { pathname: `/${name}` }).href,
    drop: () =>
      withClient(
        adminUrl,
        async (client) => void (await client.query(`drop database if exists ${name} with (force)`)),
      ),
  };
}

async function ask(): Promise<{ adminUrl: string; template: string }> {
  const answer = await fetch(inject('postgres'));
  const text = await answer.text();
  if (!answer.ok) throw new Error(`No database for the tests: ${text}`);
  return JSON.parse(text) as { adminUrl: string; template: string };
}
