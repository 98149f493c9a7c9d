/** What an entry that tells rows is called. */
export const ROWS_TOLD = 'rows.told';

/** A row as the record tells it: people by reference, instants as ISO 8601. */
export interface ToldRow {
  table: string;
  key: string;
  row: Record<string, unknown>;
}
