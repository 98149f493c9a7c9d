import type { EntityManager } from 'typeorm';
import { GrowingTree, verifyRecord, type Frontier, type Head } from '#record';
import { differingCopy, type Columns } from './copies.js';
import type { Misfit } from './waiting.js';

interface Row extends Columns {
  leaf: Buffer;
}

interface ReadThrough {
  entries: number;
  head: Head;
  misfit: Misfit | null;
}

const pageSize = 1_000;

/** Reads all sealed entries of an operator, page after page, each with the heads that lie within it. */
export async function readThrough(manager: EntityManager, operatorId: string): Promise<ReadThrough> {
  let frontier = GrowingTree.empty().frontier();
  for (;;) {
    const rows = await page(manager, operatorId, frontier.size);
    const copy = rows.map(differingCopy).find((found) => found !== null) ?? null;
    const heads = await headsOver(manager, operatorId, frontier.size, rows.length);
    const check = await verifyRecord(rows.map(asEntry), { heads, from: frontier });
    const head = GrowingTree.from(frontier).head();
    if (!check.fits) return { entries: frontier.size, head, misfit: earlier(copy, misfitOf(check)) };
    if (copy) return { entries: frontier.size, head, misfit: copy };
    frontier = check.frontier;
    if (rows.length === 0)
      return { entries: frontier.size, head, misfit: await behind(manager, operatorId, frontier) };
  }
}

/**
 * The page is cut before the entries are looked up: otherwise the database, which does not know how long the record has
 * grown, reads all of it for every page.
 */
function page(manager: EntityManager, operatorId: string, after: number): Promise<Row[]> {
  return manager.query<Row[]>(
    `select s.number, s.leaf, s.entry_id, s.operator_id, e.canonical, e.aircraft_id, e.who, e.what, e.entered_at
     from (select * from record_sealed
       where operator_id = $1 and number > $2 order by number limit ${pageSize}) s
     left join lateral (select * from record_entry where operator_id = s.operator_id and id = s.entry_id offset 0) e
       on true
     order by s.number`,
    [operatorId, after],
  );
}

/** With no more entries, any head that is left says that some are missing. */
async function headsOver(manager: EntityManager, operatorId: string, after: number, rows: number): Promise<Head[]> {
  const found = await manager.query<{ size: string; root: string }[]>(
    `select size, root from (
       select size, root from tree_head where operator_id = $1 union
       select size, root from signed_head where operator_id = $1) head
     where size > $2 and ($3::int = 0 or size <= $2 + $3) order by size limit ${2 * pageSize}`,
    [operatorId, after, rows],
  );
  return found.map(({ size, root }) => ({ size: Number(size), root }));
}

function asEntry({ number, canonical, leaf }: Row) {
  return { number: Number(number), bytes: canonical ?? Buffer.alloc(0), leafHash: leaf };
}

function misfitOf({ number, misfit, sentence }: { number: number; misfit: string; sentence: string }): Misfit {
  return { number, kind: misfit, sentence };
}

/** Of two at the same entry, altered bytes say more than a column that differs from them; but not if there are none. */
function earlier(copy: Misfit | null, other: Misfit): Misfit {
  if (copy === null) return other;
  const [mine, theirs] = [Number(copy.number), Number(other.number)];
  return mine < theirs || (mine === theirs && copy.kind === 'missing') ? copy : other;
}

/** The sealer writes a head with every entry it seals; an entry behind the newest head came another way. */
async function behind(manager: EntityManager, operatorId: string, { size }: Frontier): Promise<Misfit | null> {
  const [newest] = await manager.query<{ size: string }[]>(
    'select max(size) as size from tree_head where operator_id = $1',
    [operatorId],
  );
  const number = Number(newest?.size ?? 0) + 1;
  if (number > size) return null;
  return { number, kind: 'behind', sentence: `Entry ${number} stands behind the newest head.` };
}
