/**
 * Reads the text of a foreign file, YAML or JSON (which is YAML), to a plain value. Only plain YAML is taken: no tags,
 * few aliases, no key twice, one document.
 */
import { parseDocument } from 'yaml';
import { overLimit } from './text-limits.js';
import { keyProblem } from './yaml-keys.js';

const MOST_ALIASES = 100;

export type PlainYaml = { value: unknown } | { problems: string[] };

/** The parser's message without the excerpt that follows it; it ends in the line and the column. */
const firstLine = (text: string): string => (text.split('\n', 1)[0] ?? '').replace(/:$/, '');

/** `text` is the whole file, not trusted; at most 5 million characters. Never throws on bad content. */
export const readPlainYaml = (text: string): PlainYaml => {
  const limit = overLimit(text);
  if (limit !== null) return { problems: [limit] };
  try {
    const document = parseDocument(text, { schema: 'core', uniqueKeys: false, merge: false, logLevel: 'error' });
    const problems = [...document.errors, ...document.warnings].map(({ message }) => firstLine(message));
    if (problems.length > 0) return { problems };
    const problem = keyProblem(document.contents);
    if (problem !== null) return { problems: [problem] };
    return { value: document.toJS({ maxAliasCount: MOST_ALIASES }) as unknown };
  } catch (error) {
    // The parser counts aliases only while it resolves them.
    return { problems: [error instanceof Error ? firstLine(error.message) : 'cannot be read'] };
  }
};
