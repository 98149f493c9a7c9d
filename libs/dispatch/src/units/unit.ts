/** One installed item: a position of an entry. */
export interface Unit {
  entry: string;
  unit: string;
}

/** Names hold no slash (the MEL loader sees to it), so the key is unambiguous. */
export function unitKey({ entry, unit }: Unit): string {
  return `${entry}/${unit}`;
}

/** By code units, so that no answer depends on a locale. */
export function byCode(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
