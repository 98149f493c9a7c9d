import { withClient } from './with-client.js';

/** Where any of the words still stands: every table of every schema, every column, bytes as the text they may be. */
export async function placesOf(adminUrl: string, words: readonly string[]): Promise<string[]> {
  return withClient(adminUrl, async (client) => {
    const { rows } = await client.query<{ place: string; name: string; bytes: boolean }>(
      `select format('%I.%I', table_schema, table_name) as place, quote_ident(column_name) as name,
         data_type = 'bytea' as bytes
       from information_schema.columns join information_schema.tables using (table_schema, table_name)
       where table_schema not in ('pg_catalog', 'information_schema') and table_type = 'BASE TABLE'`,
    );
    const found: string[] = [];
    for (const { place, name, bytes } of rows) {
      const text = bytes ? `encode(${name}, 'escape')` : `${name}::text`;
      const { rowCount } = await client.query(
        `select from ${place} where exists (select from unnest($1::text[]) word where ${text} ~* ('\\m' || word || '\\M'))`,
        [words],
      );
      if (rowCount) found.push(`${place}.${name}`);
    }
    return found;
  });
}
