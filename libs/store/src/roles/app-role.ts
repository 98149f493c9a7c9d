import { Client, escapeLiteral } from 'pg';
import { derivedPassword } from '../embedded/secret.js';
import { addressFor, passwordIn } from './address.js';

/** The role the server works as: it owns nothing and no row-level rule is lifted for it. */
export const appRole = 'proviso_app';

const wrongPassword = '28P01';

/**
 * Makes the server's role, if missing, and tells its address. Its password is derived from the owner's, so that every
 * server given the same owner's address signs in alike.
 * @throws Error when the role exists with a password of its own and the owner may not change it
 */
export async function ensureAppRole(ownerUrl: string): Promise<string> {
  const secret = passwordIn(ownerUrl);
  const password = secret === '' ? '' : derivedPassword(secret, appRole);
  const appUrl = addressFor(ownerUrl, { user: appRole, password });
  if (await signsIn(appUrl)) return appUrl;
  await setUp(ownerUrl, password);
  if (await signsIn(appUrl)) return appUrl;
  throw new Error(`The role ${appRole} exists with a password that is not ours; give its address instead.`);
}

async function signsIn(url: string): Promise<boolean> {
  const client = new Client({ connectionString: url });
  try {
    await client.connect();
    return true;
  } catch (error) {
    const code = (error as { code?: string }).code;
    if (code === wrongPassword || code === '28000') return false;
    throw error;
  } finally {
    await client.end().catch(() => undefined);
  }
}

async function setUp(ownerUrl: string, password: string): Promise<void> {
  const owner = new Client({ connectionString: ownerUrl });
  await owner.connect();
  try {
    await owner.query('begin');
    await owner.query('select pg_advisory_xact_lock(hashtext($1))', [appRole]);
    const found = await owner.query('select from pg_roles where rolname = $1', [appRole]);
    const secret = password === '' ? 'password null' : `password ${escapeLiteral(password)}`;
    if (found.rowCount === 0) await owner.query(`create role ${appRole} login nosuperuser nobypassrls ${secret}`);
    else await owner.query(`alter role ${appRole} login ${secret}`);
    await owner.query('commit');
  } finally {
    await owner.end();
  }
}
