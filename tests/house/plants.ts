import { readFileSync } from 'node:fs';
import { parse } from 'yaml';

/** One line of the law with a file that breaks it, and the laws expected to fire on that file and no others. */
export interface Plant {
  says: string;
  fires: string[];
  in: string;
  /** Where it fires, when that is not the planted file itself. */
  on?: string;
  /** Permissions of the planted file. */
  mode?: number;
  text: string;
  repeat?: { line: string; times: number; then: string };
  with?: Record<string, string>;
}

const chapters = ['arrows', 'packages', 'purity', 'habits', 'permitted'];

export function allPlants(): Plant[] {
  return chapters.flatMap(
    (chapter) => parse(readFileSync(new URL(`law/${chapter}.yaml`, import.meta.url), 'utf8')) as Plant[],
  );
}

export function plantText({ text, repeat }: Plant): string {
  return repeat ? text + repeat.line.repeat(repeat.times) + repeat.then : text;
}
