import type { EntityManager } from 'typeorm';

/** The first thing that does not fit; no number where it is an entry that has none. */
export interface Misfit {
  number: number | null;
  kind: string;
  sentence: string;
}

/** Those of the operator that is set in this transaction; the waiting list itself is the sealer's alone. */
export async function waitingEntries(manager: EntityManager): Promise<number> {
  const [row] = await manager.query<{ count: string }[]>('select count(*) from entries_waiting()');
  return Number(row?.count);
}

/** An entry that nobody will ever seal: taken off the waiting list by hand, or never on it. */
export async function lostEntry(manager: EntityManager, operatorId: string): Promise<Misfit | null> {
  const [row] = await manager.query<{ id: string }[]>(
    `select e.id from record_entry e
     where e.operator_id = $1
       and not exists (select from record_sealed s where s.operator_id = e.operator_id and s.entry_id = e.id)
       and e.id not in (select entries_waiting())
     order by e.seq limit 1`,
    [operatorId],
  );
  if (!row) return null;
  return { number: null, kind: 'lost', sentence: `Entry ${row.id} has no number and is not waiting for one.` };
}
