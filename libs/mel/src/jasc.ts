/** Looks up systems (ATA chapters) and their components in the JASC table. */
import { JASC_TABLE } from './jasc-table.js';

/** A system (two digits) or one of its components (four digits). Titles are the table's own, in capitals. */
export interface JascSystem {
  code: string;
  title: string;
  chapter: string;
  chapterTitle: string;
}

const TITLES: ReadonlyMap<string, string> = new Map(
  JASC_TABLE.split(/[|\n]/)
    .map((item) => item.trim())
    .filter((item) => item !== '')
    .map((item) => {
      const gap = item.indexOf(' ');
      return [item.slice(0, gap), item.slice(gap + 1)];
    }),
);

/** The system or component of a two- or four-digit code; null when the table has none. */
export const systemOf = (code: string): JascSystem | null => {
  const title = TITLES.get(code);
  const chapter = code.slice(0, 2);
  const chapterTitle = TITLES.get(chapter);
  return title === undefined || chapterTitle === undefined ? null : { code, title, chapter, chapterTitle };
};

const systems = [...TITLES.keys()].flatMap((code) => systemOf(code) ?? []);

/** Systems by chapter, in the table's order. */
export const CHAPTERS: readonly JascSystem[] = Object.freeze(systems.filter(({ code }) => code.length === 2));

/** Chapters and components together, in the table's order. */
export const JASC_SYSTEMS: readonly JascSystem[] = Object.freeze(systems);
