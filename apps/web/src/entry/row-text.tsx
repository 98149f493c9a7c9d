import type { Schemas } from '../api/client.js';

type Row = Schemas['EntryView']['rows'][number];

/** What the MEL says in this row, with its own columns. */
export function RowText({ row }: { row: Row }) {
  return (
    <>
      <h2>Row {row.id}</h2>
      <p>
        Category <strong>{row.category}</strong>, {row.interval}. Installed {row.numberInstalled}, required for
        dispatch {row.numberRequired}.{row.covers && ` Only for ${row.covers.join(', ')}.`}
      </p>
      <p>{row.remarks}</p>
      {row.notes.map((note) => (
        <p key={note}>NOTE: {note}</p>
      ))}
      {row.incomplete && <p class="caution">The text is held incompletely: {row.incomplete}</p>}
    </>
  );
}
