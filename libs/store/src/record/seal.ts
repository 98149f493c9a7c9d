import type { DataSource, EntityManager } from 'typeorm';
import { GrowingTree } from '#record';

/** Any number that nothing else in the database locks on. */
const sealing = 7_110_002;

/** Most entries sealed in one transaction. */
export const batchSize = 2_000;

interface Waiting {
  operator_id: string;
  entry_id: string;
  leaf: Buffer;
}

/**
 * Seals what is ready: gives each entry the next number of its operator and appends its leaf to that operator's tree.
 * @returns how many were sealed; undefined when another sealer is at it
 */
export function sealOnce(source: DataSource): Promise<number | undefined> {
  return source.transaction(async (manager) => {
    const [lock] = await manager.query<{ got: boolean }[]>('select pg_try_advisory_xact_lock($1) as got', [sealing]);
    if (!lock?.got) return undefined;
    const ready = await readyToSeal(manager);
    for (const [operatorId, waiting] of byOperator(ready)) await sealOf(manager, operatorId, waiting);
    return ready.length;
  });
}

/**
 * Entries whose transaction is older than every one still running, in the order they were written. An entry of a
 * younger transaction stops the line: what was written after it may have been done because of it, and must not get the
 * smaller number. An entry from beyond the newest transaction came with a restored copy of another server's data.
 */
function readyToSeal(manager: EntityManager): Promise<Waiting[]> {
  return manager.query<Waiting[]>(
    `with now as materialized (
       select pg_snapshot_xmin(s) as oldest_running, pg_snapshot_xmax(s) as next from pg_current_snapshot() s),
     waiting as (
       select seq, operator_id, entry_id, leaf, written_in < oldest_running or written_in >= next as ready
       from record_pending, now order by seq limit $1)
     select operator_id, entry_id, leaf from waiting
     where seq < coalesce((select min(seq) from waiting where not ready), 9223372036854775807) order by seq`,
    [batchSize],
  );
}

function byOperator(ready: readonly Waiting[]): Map<string, Waiting[]> {
  const groups = new Map<string, Waiting[]>();
  for (const waiting of ready) {
    const group = groups.get(waiting.operator_id);
    if (group) group.push(waiting);
    else groups.set(waiting.operator_id, [waiting]);
  }
  return groups;
}

async function sealOf(manager: EntityManager, operatorId: string, waiting: readonly Waiting[]): Promise<void> {
  await manager.query("select set_config('app.operator', $1, true)", [operatorId]);
  const tree = await treeOf(manager, operatorId);
  const first = tree.size + 1;
  for (const { leaf } of waiting) tree.append(leaf);
  const ids = waiting.map(({ entry_id }) => entry_id);
  await manager.query(
    `insert into record_sealed (operator_id, number, entry_id, leaf)
     select $1, $2 + given.place - 1, given.entry_id, given.leaf
     from unnest($3::uuid[], $4::bytea[]) with ordinality as given (entry_id, leaf, place)`,
    [operatorId, first, ids, waiting.map(({ leaf }) => leaf)],
  );
  await manager.query('delete from record_pending where operator_id = $1 and entry_id = any($2)', [operatorId, ids]);
  await keep(manager, operatorId, tree);
}

async function treeOf(manager: EntityManager, operatorId: string): Promise<GrowingTree> {
  const [kept] = await manager.query<{ size: string; hashes: string[] }[]>(
    'select size, hashes from tree_frontier where operator_id = $1',
    [operatorId],
  );
  return kept ? GrowingTree.from({ size: Number(kept.size), hashes: kept.hashes }) : GrowingTree.empty();
}

async function keep(manager: EntityManager, operatorId: string, tree: GrowingTree): Promise<void> {
  const { size, hashes } = tree.frontier();
  await manager.query('insert into tree_head (operator_id, size, root) values ($1, $2, $3)', [
    operatorId,
    size,
    tree.head().root,
  ]);
  await manager.query(
    `insert into tree_frontier (operator_id, size, hashes) values ($1, $2, $3)
     on conflict (operator_id) do update set size = excluded.size, hashes = excluded.hashes`,
    [operatorId, size, hashes],
  );
}
