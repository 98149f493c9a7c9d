import { UsageError } from './usage-error.js';

/** What was given to a command: options by name, and the words that belong to none. */
export interface Given {
  options: Map<string, string>;
  files: string[];
}

/**
 * Reads `--name value`, `--name=value` and bare words. Refuses a name the command does not know, one without its value,
 * and one given twice: of two deadlines nobody could say which was meant.
 */
export function readGiven(args: readonly string[], names: readonly string[]): Given {
  const given: Given = { options: new Map(), files: [] };
  const left = [...args];
  for (let word = left.shift(); word !== undefined; word = left.shift()) {
    if (!word.startsWith('-') || word === '-') {
      given.files.push(word);
      continue;
    }
    const [, name = word, value] = /^--([^=]*)(?:=(.*))?$/s.exec(word) ?? [];
    if (!names.includes(name)) {
      const there = names.length === 0 ? 'no options' : names.map((one) => `--${one}`).join(', ');
      throw new UsageError(`there is no option ${word.split('=')[0]}; there are: ${there}`);
    }
    if (given.options.has(name)) throw new UsageError(`--${name} is given twice`);
    given.options.set(name, value ?? valueAfter(name, left));
  }
  return given;
}

function valueAfter(name: string, left: string[]): string {
  const next = left[0];
  if (next === undefined || next === '' || next.startsWith('--')) throw new UsageError(`--${name} needs a value`);
  left.shift();
  return next;
}

/** The value of an option that must be there. */
export function needed({ options }: Given, name: string): string {
  const value = options.get(name);
  if (value === undefined) throw new UsageError(`--${name} is missing`);
  return value;
}

/** The files that a command takes, as many as it names. */
export function filesOf({ files }: Given, ...names: readonly string[]): string[] {
  if (files.length < names.length) {
    throw new UsageError(`${names.slice(files.length).join(' and ')} missing; it takes ${names.join(' ')}`);
  }
  if (files.length > names.length) {
    throw new UsageError(`"${files[names.length]}" is one word too many`);
  }
  return files;
}
