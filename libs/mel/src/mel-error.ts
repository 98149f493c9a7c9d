/** One thing wrong with a MEL file, said so that its author can find it. */
export interface MelError {
  file: string;
  /** Number of the entry it stands in; null outside every entry, or where the entry has no readable number. */
  entry: string | null;
  /** Id of the work card and of the step it stands in; absent outside every card, or where they have no readable id. */
  card?: string;
  step?: string;
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

type Path = readonly (string | number)[];

/** The name of a member of a list in foreign content, by the key that holds it; null where there is none to be read. */
const namedAt = (content: unknown, path: Path, key: string): string | null => {
  const member = path.reduce<unknown>(
    (at, step) => (at as Record<string, unknown> | null | undefined)?.[step],
    content,
  );
  const name = (member as Record<string, unknown> | null | undefined)?.[key];
  return typeof name === 'string' ? name.slice(0, 40) : null;
};

const placeInCard = (content: unknown, path: Path): Pick<MelError, 'card' | 'step'> => {
  if (path[0] !== 'cards' || path.length < 2) return {};
  const card = namedAt(content, path.slice(0, 2), 'id');
  const step = path[2] === 'steps' && path.length > 3 ? namedAt(content, path.slice(0, 4), 'id') : null;
  return { ...(card === null ? {} : { card }), ...(step === null ? {} : { step }) };
};

/** The findings as errors of one file, in the order found, at most `MOST_ERRORS`. */
export const errorsOf = (file: string, content: unknown, findings: readonly Finding[]): MelError[] =>
  findings.slice(0, MOST_ERRORS).map(({ path, reason }) => ({
    file,
    entry: path[0] === 'entries' && path.length > 1 ? namedAt(content, path.slice(0, 2), 'number') : null,
    ...placeInCard(content, path),
    field: pointerOf(path),
    reason,
  }));
