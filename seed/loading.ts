/** What the steps of loading the demo hand to each other. */
import type { Store } from '#store';

export interface DemoOptions {
  /** Folder of the data files. */
  folder: string;
  ownerUrl: string;
  store: Store;
  /** The instant of loading, ISO 8601 UTC. Its day in the base of each operator is day 0. */
  now: string;
  tzdb: string;
}

/** Ids given to the names of the files. */
export interface Ids {
  operator: string;
  person: Map<string, string>;
  organisation: Map<string, string>;
  aircraft: Map<string, string>;
}

export function idOf(ids: ReadonlyMap<string, string>, name: string): string {
  const id = ids.get(name);
  if (id === undefined) throw new Error(`the seed names ${name}, which stands in none of its files`);
  return id;
}

/** The calendar day of an instant in a zone, YYYY-MM-DD. */
export function dayIn(at: string, zone: string): string {
  return new Intl.DateTimeFormat('en-CA', { timeZone: zone, dateStyle: 'short' }).format(new Date(at));
}
