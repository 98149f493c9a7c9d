interface Place {
  entry: string;
  subEntry: string | null;
  row: string | null;
  field: string | null;
}

/** `32-42-01, row 1 (all), interval`: the sub-entry in brackets, for most entries have but one. */
export function placeWords({ entry, subEntry, row, field }: Place): string {
  const inside = subEntry === null ? '' : row === null ? `, sub-entry ${subEntry}` : `, row ${row} (${subEntry})`;
  return `${entry}${inside}${field === null ? '' : `, ${field}`}`;
}
