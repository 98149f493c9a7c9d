/** Reads the text of a MEL file, YAML or JSON, and loads it. */
import { loadMel, type LoadedMel } from './load-mel.js';
import { MOST_ERRORS } from './mel-error.js';
import { readPlainYaml } from './plain-yaml.js';

/** `text` is the whole file, not trusted; at most 5 million characters. Never throws on bad content. */
export const readMel = (text: string, file: string): LoadedMel => {
  const read = readPlainYaml(text);
  if ('value' in read) return loadMel(read.value, file);
  return { errors: read.problems.slice(0, MOST_ERRORS).map((reason) => ({ file, entry: null, field: '', reason })) };
};
