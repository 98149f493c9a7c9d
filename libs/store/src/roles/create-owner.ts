import { Client, escapeIdentifier, escapeLiteral } from 'pg';
import { derivedPassword } from '../embedded/secret.js';
import { addressFor, passwordIn } from './address.js';

const owner = 'proviso_owner';

/**
 * Makes a database owned by `proviso_owner`, a role that is no superuser: row-level security then binds even the
 * owner. Does nothing where both exist already.
 * @param adminUrl signs in as a superuser and carries a password
 * @returns the address of that database for the owner
 */
export async function createOwner(adminUrl: string, database: string): Promise<string> {
  const password = derivedPassword(passwordIn(adminUrl), owner);
  const admin = new Client({ connectionString: adminUrl });
  await admin.connect();
  try {
    await admin.query('select pg_advisory_lock(hashtext($1))', [owner]);
    await createRole(admin, password);
    const found = await admin.query('select from pg_database where datname = $1', [database]);
    if (found.rowCount === 0)
      await admin.query(`create database ${escapeIdentifier(database)} owner ${escapeIdentifier(owner)}`);
  } finally {
    await admin.end();
  }
  return addressFor(adminUrl, { user: owner, password, database });
}

async function createRole(admin: Client, password: string): Promise<void> {
  const found = await admin.query('select from pg_roles where rolname = $1', [owner]);
  const verb = found.rowCount === 0 ? 'create' : 'alter';
  await admin.query(
    `${verb} role ${escapeIdentifier(owner)} login createrole createdb nosuperuser nobypassrls ` +
      `password ${escapeLiteral(password)}`,
  );
}
