import { hexOf, leafHash, recordBytes, type Head } from '#record';
import { newId } from '../ids.js';
import { ROWS_TOLD, type ToldRow } from '../record/told-row.js';
import { UNSAVED_SINCE } from '../record/unsaved-since.js';
import { isoText } from '../rows/column.js';
import type { Transaction } from '../transaction.js';

/** What is to be recorded. Instants are ISO 8601 with offset; persons stand in `payload` by reference only. */
export interface EntryToAppend {
  /** The person's id; null when the program itself acted. The entry holds the reference. */
  who: string | null;
  /** Id of the authorisation under which it was done. */
  authorisation: string | null;
  /** For which organisation it was done. */
  organisation: { name: string; approval: string } | null;
  /** What was done, e.g. `defect.deferred`. */
  what: string;
  aircraft: { id: string; registration: string } | null;
  times: { occurredAt?: string; recordedAt?: string; enteredAt: string };
  /** The result, not the request: row, last day, end and zone data rather than "three days". */
  payload: object;
}

/** An entry whose bytes are fixed and that is not written yet. */
export interface Prepared {
  id: string;
  /** The leaf hash, 64 hex digits. */
  leaf: string;
  row: RowOfEntry;
  write(): Promise<void>;
}

interface RowOfEntry {
  id: string;
  aircraftId: string | null;
  who: string | null;
  what: string;
  enteredAt: string;
  canonical: Buffer;
  leaf: Buffer;
}

/** An entry as its bytes give it. */
export interface RecordedEntry extends Omit<EntryToAppend, 'payload'> {
  format: 'proviso-record/1';
  id: string;
  operator: string;
  payload: Record<string, unknown>;
}

export interface Recorded {
  entry: RecordedEntry;
  /** The leaf hash, 64 hex digits. */
  leaf: string;
  /** Null until sealed, a fraction of a second after it was written. */
  number: number | null;
  sealedAt: string | null;
}

/** That something was done, by its number in the record. */
export interface Change {
  number: number;
  /** Id of the aircraft; null where it concerns none. */
  aircraft: string | null;
  what: string;
}

interface Found {
  canonical: Buffer;
  leaf: Buffer;
  number: string | null;
  sealedAt: Date | null;
}

/** The rows that an entry tells. */
export function rowsIn(canonical: Uint8Array): ToldRow[] {
  return (JSON.parse(Buffer.from(canonical).toString('utf8')) as { payload: { rows: ToldRow[] } }).payload.rows;
}

/** The record of one operator: what was done is appended with the doing, and nothing is ever altered. */
export class RecordOfOperator {
  constructor(
    private readonly tx: Transaction,
    private readonly references: Map<string, string>,
  ) {}

  /**
   * Appends one entry in this transaction: it stands if and only if everything else done in it does.
   * @throws Unrecordable when the payload has no canonical form
   */
  async append(entry: EntryToAppend): Promise<{ id: string; leaf: string }> {
    const { id, leaf, write } = await this.prepare(entry);
    await write();
    return { id, leaf };
  }

  /**
   * Appends several in their order, in one statement.
   * @throws Unrecordable when a payload has no canonical form
   */
  async appendAll(entries: readonly EntryToAppend[]): Promise<{ id: string; leaf: string }[]> {
    if (entries.length === 0) return [];
    const prepared: Prepared[] = [];
    for (const entry of entries) prepared.push(await this.prepare(entry));
    const rows = prepared.map(({ row }) => row);
    await this.tx.query(
      `insert into record_entry (operator_id, id, aircraft_id, who, what, entered_at, canonical, leaf)
       select $1, id, aircraft_id, who, what, entered_at, canonical, leaf
       from unnest($2::uuid[], $3::uuid[], $4::text[], $5::text[], $6::timestamptz[], $7::bytea[], $8::bytea[])
         with ordinality as entry (id, aircraft_id, who, what, entered_at, canonical, leaf, place)
       order by place`,
      [
        this.tx.operatorId,
        rows.map(({ id }) => id),
        rows.map(({ aircraftId }) => aircraftId),
        rows.map(({ who }) => who),
        rows.map(({ what }) => what),
        rows.map(({ enteredAt }) => enteredAt),
        rows.map(({ canonical }) => canonical),
        rows.map(({ leaf }) => leaf),
      ],
    );
    return prepared.map(({ id, leaf }) => ({ id, leaf }));
  }

  /**
   * The same in two steps, so that what points at the entry can be sent together with it: call `write` first.
   * @throws Unrecordable when the payload has no canonical form
   */
  async prepare(entry: EntryToAppend): Promise<Prepared> {
    const { operatorId } = this.tx;
    const id = newId();
    const who = entry.who === null ? null : await this.referenceOf(entry.who);
    const { authorisation, organisation, what, times, payload } = entry;
    const aircraft = entry.aircraft && { id: entry.aircraft.id, registration: entry.aircraft.registration };
    const content = { format: 'proviso-record/1', id, operator: operatorId, who, authorisation, organisation, what };
    const canonical = Buffer.from(recordBytes({ ...content, aircraft, times, payload }));
    if (entry.who !== null && canonical.includes(entry.who)) {
      throw new Error('The record names persons by reference; this entry holds the id of the acting person.');
    }
    const leaf = Buffer.from(leafHash(canonical));
    const row = { id, aircraftId: aircraft?.id ?? null, who, what, enteredAt: times.enteredAt, canonical, leaf };
    const write = async (): Promise<void> => {
      await this.tx.query(
        `insert into record_entry (operator_id, id, aircraft_id, who, what, entered_at, canonical, leaf)
         values ($1, $2, $3, $4, $5, $6, $7, $8)`,
        [operatorId, id, row.aircraftId, who, what, times.enteredAt, canonical, leaf],
      );
    };
    return { id, leaf: hexOf(leaf), row, write };
  }

  async get(id: string): Promise<Recorded | null> {
    const [found] = await this.select('e.id = $2', 'e.seq', [id]);
    return found ?? null;
  }

  /** The bytes of these entries, as they are kept and hashed. */
  async bytesOf(entryIds: readonly string[]): Promise<Map<string, Uint8Array>> {
    const rows = await this.tx.query<{ id: string; canonical: Buffer }>(
      'select id, canonical from record_entry where operator_id = $1 and id = any($2)',
      [this.tx.operatorId, entryIds],
    );
    return new Map(rows.map(({ id, canonical }) => [id, canonical]));
  }

  /** The newest entry of one kind that the program itself wrote, such as that a backup was made; null when there is none. */
  async lastOf(what: 'backup.made'): Promise<Recorded | null> {
    const [found] = await this.select('e.what = $2', 'e.seq desc limit 1', [what]);
    return found ?? null;
  }

  /** When the first entry was made that stands in no backup; null where all are saved. */
  async unsavedSince(): Promise<string | null> {
    const [row] = await this.tx.query<{ at: Date }>(UNSAVED_SINCE, [this.tx.operatorId]);
    return row?.at.toISOString() ?? null;
  }

  /** The history of one aircraft in the order it was written. */
  ofAircraft(aircraftId: string, limit = 1000): Promise<Recorded[]> {
    return this.select('e.aircraft_id = $2', 'e.seq limit $3', [aircraftId, limit]);
  }

  /** What was recorded of one kind of an aircraft, in the order it was written. */
  ofAircraftAndKind(aircraftId: string, what: string): Promise<Recorded[]> {
    return this.select('e.aircraft_id = $2 and e.what = $3', 'e.seq', [aircraftId, what]);
  }

  /** All of one aircraft in the order of the record; what is not sealed yet comes last. */
  wholeOfAircraft(aircraftId: string): Promise<Recorded[]> {
    return this.select('e.aircraft_id = $2', 's.number nulls last, e.seq', [aircraftId]);
  }

  /** When something was last entered for each aircraft; one that nothing was entered for is missing. */
  async lastOfEachAircraft(): Promise<{ id: string; registration: string; at: string }[]> {
    const rows = await this.tx.query<{ id: string; registration: string; at: Date }>(
      `select a.id, a.registration, last.entered_at as at from aircraft a cross join lateral (
         select entered_at from record_entry e where e.operator_id = a.operator_id and e.aircraft_id = a.id
         order by e.seq desc limit 1) last
       where a.operator_id = $1 order by a.registration`,
      [this.tx.operatorId],
    );
    return rows.map((row) => ({ ...row, at: row.at.toISOString() }));
  }

  /** The numbers of these entries; one that is not sealed yet is missing. */
  async numbersOf(entryIds: readonly string[]): Promise<Map<string, number>> {
    const rows = await this.tx.query<{ id: string; number: string }>(
      'select entry_id as id, number from record_sealed where operator_id = $1 and entry_id = any($2)',
      [this.tx.operatorId, entryIds],
    );
    return new Map(rows.map(({ id, number }) => [id, Number(number)]));
  }

  /** Entries that tell rows, in the order in which they were written, sealed or not. @param after of the entry before */
  async rowsTold(after: string, limit: number): Promise<{ id: string; seq: string; rows: ToldRow[] }[]> {
    const found = await this.tx.query<{ id: string; seq: string; canonical: Buffer }>(
      `select id, seq, canonical from record_entry
       where operator_id = $1 and aircraft_id is null and seq > $2 and what = $3 order by seq limit $4`,
      [this.tx.operatorId, after, ROWS_TOLD, limit],
    );
    return found.map(({ id, seq, canonical }) => ({ id, seq, rows: rowsIn(canonical) }));
  }

  /** The rows that these entries tell, by the id of the entry. */
  async rowsOf(entryIds: readonly string[]): Promise<Map<string, ToldRow[]>> {
    const bytes = await this.bytesOf(entryIds);
    return new Map([...bytes].map(([id, canonical]) => [id, rowsIn(canonical)]));
  }

  /** What was sealed after a number, in order: nothing can ever appear before a number already given. */
  sealedAfter(number: number, limit: number): Promise<Recorded[]> {
    return this.select('s.number > $2', 's.number limit $3', [number, limit]);
  }

  /** What was done and to which aircraft, without what the entries hold; rows told are told with an act of their own. */
  async changesAfter(number: number, limit: number): Promise<Change[]> {
    const rows = await this.tx.query<{ number: string; aircraft: string | null; what: string }>(
      `select s.number, e.aircraft_id as aircraft, e.what
       from record_sealed s join record_entry e on e.operator_id = s.operator_id and e.id = s.entry_id
       where s.operator_id = $1 and s.number > $2 and e.what <> $4 order by s.number limit $3`,
      [this.tx.operatorId, number, limit, ROWS_TOLD],
    );
    return rows.map((row) => ({ ...row, number: Number(row.number) }));
  }

  /** The newest head; size 0 before anything was sealed. */
  async head(): Promise<Head | null> {
    const [found] = await this.tx.query<{ size: string; root: string }>(
      'select size, root from tree_head where operator_id = $1 order by size desc limit 1',
      [this.tx.operatorId],
    );
    return found ? { size: Number(found.size), root: found.root } : null;
  }

  private async select(where: string, order: string, values: unknown[]): Promise<Recorded[]> {
    const rows = await this.tx.query<Found>(
      `select e.canonical, e.leaf, s.number, s.sealed_at as "sealedAt"
       from record_entry e
       left join record_sealed s on s.operator_id = e.operator_id and s.entry_id = e.id
       where e.operator_id = $1 and ${where} order by ${order}`,
      [this.tx.operatorId, ...values],
    );
    return rows.map(({ canonical, leaf, number, sealedAt }) => ({
      entry: JSON.parse(canonical.toString('utf8')) as RecordedEntry,
      leaf: hexOf(leaf),
      number: number === null ? null : Number(number),
      sealedAt: isoText(sealedAt),
    }));
  }

  /** A reference never changes, so it is asked for once; only of members, whom row-level security shows. */
  private async referenceOf(personId: string): Promise<string> {
    const key = `${this.tx.operatorId}/${personId}`;
    const known = this.references.get(key);
    if (known !== undefined) return known;
    const [person] = await this.tx.query<{ reference: string }>('select reference from person where id = $1', [
      personId,
    ]);
    if (!person) throw new Error(`No person ${personId} works for this operator.`);
    this.references.set(key, person.reference);
    return person.reference;
  }
}
