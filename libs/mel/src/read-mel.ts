/**
 * Reads the text of a MEL file, YAML or JSON (which is YAML), and loads it. Only plain YAML is taken: no tags, few
 * aliases, no key twice, one document.
 */
import { parseDocument } from 'yaml';
import { loadMel, type LoadedMel } from './load-mel.js';
import { MOST_ERRORS } from './mel-error.js';
import { overLimit } from './text-limits.js';
import { keyProblem } from './yaml-keys.js';

const MOST_ALIASES = 100;

const refused = (file: string, reasons: readonly string[]): LoadedMel => ({
  errors: reasons.slice(0, MOST_ERRORS).map((reason) => ({ file, entry: null, field: '', reason })),
});

const firstLine = (text: string): string => text.split('\n', 1)[0] ?? '';

/** `text` is the whole file, not trusted; at most 5 million characters. Never throws on bad content. */
export const readMel = (text: string, file: string): LoadedMel => {
  const limit = overLimit(text);
  if (limit !== null) return refused(file, [limit]);
  try {
    const document = parseDocument(text, { schema: 'core', uniqueKeys: false, merge: false, logLevel: 'error' });
    const problems = [...document.errors, ...document.warnings].map(({ message }) => firstLine(message));
    if (problems.length > 0) return refused(file, problems);
    const problem = keyProblem(document.contents);
    if (problem !== null) return refused(file, [problem]);
    return loadMel(document.toJS({ maxAliasCount: MOST_ALIASES }), file);
  } catch (error) {
    // The parser counts aliases only while it resolves them.
    return refused(file, [error instanceof Error ? firstLine(error.message) : 'cannot be read']);
  }
};
