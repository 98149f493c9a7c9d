import type { Transaction } from '../transaction.js';

/** A row, or an entry of the record, in whose text a word stands. */
export interface FoundText {
  /** The table; `record_entry` for the record. */
  table: string;
  /** Its number in the record; null in any other table, and until it is sealed. */
  number: number | null;
  /** What was done, of an entry. */
  what: string | null;
  defectId: string | null;
  aircraftId: string | null;
}

/** Of one operator, what people wrote in their own words: wherever it stands. */
export class FreeText {
  constructor(private readonly tx: Transaction) {}

  /**
   * Looks for whole words, in upper or lower case, in every column of every table that the server's role may read, and in
   * every entry of the record. What an erasure takes away by itself is passed over: addresses and calendars of the person,
   * and kept answers.
   */
  async mentioning(words: readonly string[], personId: string, most: number): Promise<FoundText[]> {
    // No word would be found everywhere.
    if (words.length === 0) return [];
    const pattern = `(?i)(^|\\W)(${words.map(literal).join('|')})(\\W|$)`;
    const found = await this.inRecord(pattern, most);
    for (const table of await this.searched()) {
      found.push(...(await this.inTable(table, pattern, personId, most)));
    }
    return found;
  }

  private async searched(): Promise<string[]> {
    const rows = await this.tx.query<{ name: string }>(
      `select c.relname as name from pg_class c
       where c.relnamespace = 'public'::regnamespace and c.relkind = 'r' and c.relname <> all($1)
         and has_table_privilege(c.oid, 'select') and exists (select from pg_attribute a
           where a.attrelid = c.oid and attname = 'operator_id' and not attisdropped) order by 1`,
      [PASSED_OVER],
    );
    return rows.map(({ name }) => name);
  }

  private inRecord(pattern: string, most: number): Promise<FoundText[]> {
    return this.tx
      .query<Omit<FoundText, 'number'> & { number: string | null }>(
        `select 'record_entry' as table, s.number, e.what, d.id as "defectId", e.aircraft_id as "aircraftId"
         from record_entry e
         left join record_sealed s on s.operator_id = e.operator_id and s.entry_id = e.id
         left join defect d on d.operator_id = e.operator_id and d.aircraft_id = e.aircraft_id
           and to_jsonb(d.number) = convert_from(e.canonical, 'UTF8')::jsonb #> '{payload,number}'
         where e.operator_id = $1 and ${plain("convert_from(e.canonical, 'UTF8')")} ~ $2 order by e.seq limit $3`,
        [this.tx.operatorId, pattern, most],
      )
      .then((rows) => rows.map((row) => ({ ...row, number: row.number === null ? null : Number(row.number) })));
  }

  private inTable(table: string, pattern: string, personId: string, most: number): Promise<FoundText[]> {
    const own = OWN.includes(table) ? 'and person_id <> $5' : 'and $5::uuid is not null';
    const defect = table === 'defect' ? 'id' : 'defect_id';
    return this.tx.query<FoundText>(
      `select $4 as table, null as number, null as what, to_jsonb(t) ->> '${defect}' as "defectId",
         to_jsonb(t) ->> 'aircraft_id' as "aircraftId"
       from "${table}" t where operator_id = $1 ${own} and ${plain('t::text')} ~ $2 limit $3`,
      [this.tx.operatorId, pattern, most, table, personId],
    );
  }
}

/** Erased with the person, or the record under other names. */
const PASSED_OVER = ['idempotency', 'record_entry', 'record_sealed', 'tree_head', 'signed_head', 'erasure'];
const OWN = ['reminder_address', 'calendar_feed'];

/** A line break is written as a letter behind a backslash, which would hide where a word begins. */
const plain = (text: string): string => `regexp_replace(${text}, '\\\\+[nrtbf]', ' ', 'g')`;

/** The word as it stands, whatever it holds. */
function literal(word: string): string {
  return word.replaceAll(/[^\p{L}\p{N}]/gu, (sign) => (/\s/.test(sign) ? String.raw`\s+` : `\\${sign}`));
}
