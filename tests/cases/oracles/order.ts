/** What the oracle of proposals says of one choice, and which of two choices is the better one. */
export interface OracleChoice {
  /** 2 may fly, 1 after work, 0 may not fly. */
  lo: number;
  hi: number;
  changes: number;
  untimed: number;
  minutes: number;
  /** `[entry, units, defect, row]`, sorted by the first three. */
  list: [string, string, string, string][];
}

/** By rule 8 for one flight: the first is the best. */
export function compareChoices(a: OracleChoice, b: OracleChoice): number {
  const certain = Math.min(b.lo, 1) - Math.min(a.lo, 1) || b.lo - a.lo;
  const possible = a.lo === 0 && b.lo === 0 ? Math.min(b.hi, 1) - Math.min(a.hi, 1) : 0;
  return (
    certain || possible || a.changes - b.changes || a.untimed - b.untimed || a.minutes - b.minutes || lists(a, b)
  );
}

function lists(a: OracleChoice, b: OracleChoice): number {
  const text = ({ list }: OracleChoice): string[] => list.map((one) => one.join('\u0001'));
  const [x, y] = [text(a), text(b)];
  for (let at = 0; at < Math.min(x.length, y.length); at++) {
    if (x[at]! !== y[at]!) return x[at]! < y[at]! ? -1 : 1;
  }
  return x.length - y.length;
}
