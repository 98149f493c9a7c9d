/**
 * Reads the text of a MEL file, YAML or JSON (which is YAML), and loads it. Only plain YAML is taken: no custom tags,
 * few aliases, no key twice, one document.
 */
import { parseDocument } from 'yaml';
import { loadMel, type LoadedMel } from './load-mel.js';
import { MOST_ERRORS } from './mel-error.js';

const LONGEST_FILE = 5_000_000;
const MOST_ALIASES = 100;

const refused = (file: string, reasons: string[]): LoadedMel => ({
  errors: reasons.slice(0, MOST_ERRORS).map((reason) => ({ file, entry: null, field: '', reason })),
});

/** `text` is the whole file, not trusted. Never throws on bad content. */
export const readMel = (text: string, file: string): LoadedMel => {
  if (text.length > LONGEST_FILE) return refused(file, [`the file is longer than ${LONGEST_FILE} characters`]);
  try {
    const document = parseDocument(text, { schema: 'core', uniqueKeys: true, merge: false, logLevel: 'silent' });
    const problems = [...document.errors, ...document.warnings].map(({ message }) => message.split('\n')[0] ?? '');
    if (problems.length > 0) return refused(file, problems);
    return loadMel(document.toJS({ maxAliasCount: MOST_ALIASES }), file);
  } catch (error) {
    // The parser recurses, and counts aliases only while it resolves them.
    return refused(file, [error instanceof Error ? (error.message.split('\n')[0] ?? '') : 'cannot be read']);
  }
};
