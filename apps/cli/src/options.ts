import { UsageError } from './usage-error.js';

/** What a command may be told by `--name value`, and its one line in the help. */
export interface Option {
  name: string;
  /** What follows the name, such as FILE or A|B; null for one that stands alone. */
  value: string | null;
  about: string;
  /** The command cannot do without it. */
  must?: true;
}

/** Of every command that works on a database. */
export const DATABASE: Option = {
  name: 'database',
  value: 'URL',
  about: 'the database, postgres://...; else DATABASE_URL, else that of `npm start`',
};

/** What was given to a command: options by name, and the words that belong to none. */
export interface Given {
  options: Map<string, string>;
  files: string[];
}

/**
 * Reads `--name value`, `--name=value`, `--name` of an option that takes none, and bare words. Refuses a name the command
 * does not know, one without its value, and one given twice: of two deadlines nobody could say which was meant.
 */
export function readGiven(args: readonly string[], options: readonly Option[]): Given {
  const given: Given = { options: new Map(), files: [] };
  const left = [...args];
  for (let word = left.shift(); word !== undefined; word = left.shift()) {
    if (!word.startsWith('-') || word === '-') {
      given.files.push(word);
      continue;
    }
    const [, name = word, value] = /^--([^=]*)(?:=(.*))?$/s.exec(word) ?? [];
    const option = options.find((one) => one.name === name);
    if (option === undefined) {
      const there = options.length === 0 ? 'no options' : options.map((one) => `--${one.name}`).join(', ');
      throw new UsageError(`there is no option ${word.split('=')[0]}; there are: ${there}`);
    }
    if (given.options.has(name)) throw new UsageError(`--${name} is given twice`);
    if (option.value === null && value !== undefined) throw new UsageError(`--${name} takes no value`);
    given.options.set(name, option.value === null ? '' : (value ?? valueAfter(name, left)));
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

interface TakesFiles {
  files?: readonly { name: string }[];
  onStray?: string;
}

/** Refuses a call with more or fewer bare words than the command takes. */
export function holdFiles({ files }: Given, { files: takes = [], onStray }: TakesFiles): void {
  const names = takes.map(({ name }) => name);
  if (files.length < names.length) {
    throw new UsageError(`${names.slice(files.length).join(' and ')} missing; it takes ${names.join(' ')}`);
  }
  const stray = files[names.length];
  if (stray === undefined) return;
  throw new UsageError(`"${stray}" is one word too many${onStray === undefined ? '' : `; ${onStray}`}`);
}
