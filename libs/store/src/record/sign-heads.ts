import type { DataSource, EntityManager } from 'typeorm';
import { signHead, type HeadStatement } from '#record';
import type { HeadKey } from './head-key.js';

/** Any number that nothing else in the database locks on. */
const signing = 7_110_004;

/**
 * Signs the newest head of every operator whose record grew since its last signed head. Waits for another server that is
 * at it; what that one signed is then not signed again.
 * @param now ISO 8601
 * @returns how many were signed
 */
export function signNewHeads(source: DataSource, key: HeadKey, now: string): Promise<number> {
  return source.transaction(async (manager) => {
    await manager.query('select pg_advisory_xact_lock($1)', [signing]);
    const operators = await manager.query<{ id: string }[]>('select id from recorded_operators()');
    let signed = 0;
    for (const { id } of operators) if (await signHeadOf(manager, id, key, now)) signed += 1;
    return signed;
  });
}

async function signHeadOf(manager: EntityManager, log: string, key: HeadKey, now: string): Promise<boolean> {
  await manager.query("select set_config('app.operator', $1, true)", [log]);
  const [newest] = await manager.query<{ size: string; root: string }[]>(
    `select size, root from tree_head where operator_id = $1
       and size > coalesce((select max(size) from signed_head where operator_id = $1), 0)
     order by size desc limit 1`,
    [log],
  );
  if (!newest) return false;
  const statement: HeadStatement = { log, size: Number(newest.size), root: newest.root, signedAt: now };
  const { size, root, signedAt, signature } = signHead(statement, key.privateKey);
  await manager.query(
    `insert into signed_head (operator_id, size, root, signed_at, signature, public_key)
     values ($1, $2, $3, $4, $5, $6)`,
    [log, size, root, signedAt, signature, key.publicHex],
  );
  return true;
}
