/** What the commands about operators have in common. */
import type { Option } from './options.js';
import { UsageError } from './usage-error.js';

export const OPERATOR_OPTIONS = {
  code: { name: 'code', value: 'CODE', about: 'its code, 2 to 8 capital letters and digits', must: true },
  administrator: { name: 'administrator', value: 'NAME', about: 'name of the person who administers it' },
  signIn: {
    name: 'sign-in',
    value: 'NAME',
    about: 'the name that person signs in with; nobody else on this server has it',
    must: true,
  },
  licence: { name: 'licence', value: 'NUMBER', about: 'licence number of that person' },
} as const satisfies Record<string, Option>;

/** The option that each part of an operator came from. */
const OPTION_OF: Record<string, string> = { signInName: '--sign-in' };

/** What cannot be is a mistake in the call: said by its option. */
export async function asRefused<T>(work: () => Promise<T>): Promise<T> {
  const { OpeningRefused } = await import('../../server/src/index.js');
  try {
    return await work();
  } catch (error) {
    if (!(error instanceof OpeningRefused)) throw error;
    throw new UsageError(`${OPTION_OF[error.field] ?? `--${error.field}`} ${error.message}; nothing was made`);
  }
}
