/** Where a piece of work of an item is read and signed. */
import type { Schemas } from '../api/client.js';

type Item = Schemas['DefectLine'];
export type Work = Schemas['WorkLine'];
export type Placard = NonNullable<Item['placard']>;

/** A placard with the row that asks for it. */
export interface PlacardOwed extends Placard {
  /** `<entry>/<row>/placard` */
  work: string;
}

/** Every procedure of the item: of its own row, and of rows that it brings along. */
export function worksOf({ work, brought }: Item): Work[] {
  return [...work, ...brought.flatMap((row) => row.work)];
}

/** Every placard of the item, in the same order. */
export function placardsOf({ entry, row, placard, brought }: Item): PlacardOwed[] {
  return [{ entry, row, placard }, ...brought].flatMap((one) =>
    one.placard ? [{ ...one.placard, work: `${one.entry}/${one.row}/placard` }] : [],
  );
}

/** Page of `<entry>/<row>/<procedure>` or of `<entry>/<row>/placard`; null when the item has no such work. */
export function pageOf(item: Item, work: string): string | null {
  const known = worksOf(item).some((one) => one.work === work) || placardsOf(item).some((one) => one.work === work);
  return known ? `/defects/${item.id}/work/${work}` : null;
}

/** `M1` of `80-12-11/1/M1`. */
export function shortName(work: string): string {
  return work.split('/').at(-1) ?? work;
}

/** Work of its own row that nobody has signed yet: procedures, then the placard. */
export function neverSigned({ entry, row, work, placard }: Item): string[] {
  const procedures = work.filter(({ signed }) => signed === null).map((one) => one.work);
  return placard && !placard.fitted ? [...procedures, `${entry}/${row}/placard`] : procedures;
}

/** Is this work of an answer done for the item? What an item brings along belongs to no defect by name. */
export function isOf({ work, defect }: Schemas['Verdict']['work'][number], item: Item): boolean {
  return defect === undefined
    ? item.brought.some((row) => work.startsWith(`${row.entry}/${row.row}/`))
    : defect === item.id;
}
