/** One thing wrong with a MEL file, said so that its author can find it. */
export interface MelError {
  file: string;
  /** Number of the entry it stands in; null outside every entry, or where the entry has no readable number. */
  entry: string | null;
  /** JSON pointer (RFC 6901) to the place. */
  field: string;
  reason: string;
}

/** What a check finds; the loader adds file and entry. */
export interface Finding {
  path: readonly (string | number)[];
  reason: string;
}

/** No file is reported with more errors than a person would read. */
export const MOST_ERRORS = 200;

export const pointerOf = (path: readonly (string | number)[]): string =>
  path.map((step) => `/${String(step).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('');

const numberAt = (content: unknown, index: string | number | undefined): string | null => {
  const entries = (content as { entries?: unknown } | null)?.entries;
  const entry: unknown = Array.isArray(entries) ? entries[Number(index)] : undefined;
  const number = (entry as { number?: unknown } | null | undefined)?.number;
  return typeof number === 'string' ? number.slice(0, 40) : null;
};

/** The findings as errors of one file, in the order found, at most `MOST_ERRORS`. */
export const errorsOf = (file: string, content: unknown, findings: readonly Finding[]): MelError[] =>
  findings.slice(0, MOST_ERRORS).map(({ path, reason }) => ({
    file,
    entry: path[0] === 'entries' ? numberAt(content, path[1]) : null,
    field: pointerOf(path),
    reason,
  }));
