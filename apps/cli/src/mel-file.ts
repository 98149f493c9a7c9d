import { findingLine, readMel, type Mel } from '#mel';
import { readText } from './read-file.js';
import { UsageError } from './usage-error.js';

/** Loads a MEL file whole, or refuses it with its first error and the number of the others. */
export async function melFrom(path: string): Promise<Mel> {
  const loaded = readMel(await readText(path), path);
  if ('mel' in loaded) return loaded.mel;
  throw new UsageError(firstOf(loaded.errors.map(findingLine), `proviso mel check ${path}`));
}

/** The first of several findings, and where the rest can be read. */
export function firstOf(lines: readonly string[], all?: string): string {
  const more = lines.length - 1;
  if (more <= 0) return lines[0] ?? 'cannot be read';
  return `${lines[0]} (and ${more} more${all === undefined ? '' : `: ${all}`})`;
}

/** What a MEL is called in an answer. */
export const headOf = ({ content: { document, revision } }: Mel) => ({ document, revision });
