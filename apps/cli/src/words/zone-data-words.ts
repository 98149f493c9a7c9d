import { count } from './say-time.js';

/** What a look at open deadlines found, as the server gives it. */
interface Looked {
  operator: string;
  tzdb: string;
  newer: string | null;
  counted: number;
  differences: number;
}

/** A line for each operator of which there is something to tell; none where the zone data changed nothing. */
export function zoneDataWords(looked: readonly Looked[]): string[] {
  return looked.flatMap(({ operator, tzdb, newer, counted, differences }) => {
    if (newer !== null)
      return `${operator}: deadlines are stored with time-zone data ${newer}, newer than ${tzdb}; this server computes none.`;
    if (differences === 0) return [];
    const open = count(counted, 'open deadline');
    return `${operator}: by time-zone data ${tzdb} ${differences} of ${open} end at another instant; the stricter end counts until a person confirms (page /zone-data).`;
  });
}
