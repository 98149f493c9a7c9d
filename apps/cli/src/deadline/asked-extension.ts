import { DEFAULT_PRESET, extend, type ExtensionAnswer, type PresetName, type RectificationClock } from '#intervals';
import type { Given, Option } from '../options.js';
import { UsageError } from '../usage-error.js';
import { listOf, wholeOf } from './pairs.js';

/** What belongs to an extension that is asked for. */
export const EXTENSION_OPTIONS: readonly Option[] = [
  { name: 'extend-at', value: 'INSTANT', about: 'may it be extended, granted at this moment?' },
  { name: 'extended', value: 'N', about: 'how often it was extended before; 0 when absent' },
  { name: 'extend-days', value: 'N', about: 'by how many days; the most that is allowed when absent' },
  { name: 'agreement', value: 'TEXT', about: 'the agreement of the authority, where one is needed' },
  { name: 'procedure', value: 'none', about: 'the operator holds no approved procedure for extensions' },
  { name: 'holidays', value: 'DAYS', about: 'days that are no working days, for the notice to the authority' },
];

const DAY = /^\d{4}-\d\d-\d\d$/;

/** Asked as by an operator who holds an approved procedure and has not yet extended this deferral, unless it is said. */
export function extensionOf(
  { options }: Given,
  clock: RectificationClock,
  preset: PresetName = DEFAULT_PRESET,
): ExtensionAnswer | undefined {
  const grantedAt = options.get('extend-at');
  const stray = EXTENSION_OPTIONS.find(({ name }) => options.has(name))?.name;
  if (grantedAt === undefined) {
    if (stray !== undefined)
      throw new UsageError(`--${stray} is of an extension, and --extend-at does not say when it is granted`);
    return undefined;
  }
  const number = (name: 'extended' | 'extend-days') => {
    const text = options.get(name);
    return text === undefined ? undefined : wholeOf(`--${name}`, text);
  };
  const days = number('extend-days');
  const authorityAgreement = options.get('agreement');
  return extend({
    preset,
    window: clock,
    grantedAt,
    alreadyExtended: number('extended') ?? 0,
    procedureHeld: options.get('procedure') !== 'none',
    holidays: holidaysOf(options.get('holidays')),
    ...(days !== undefined && { days }),
    ...(authorityAgreement !== undefined && { authorityAgreement }),
  });
}

function holidaysOf(text: string | undefined): string[] {
  const days = text === undefined ? [] : listOf(text);
  const odd = days.find((day) => !DAY.test(day) || Number.isNaN(Date.parse(day)));
  if (odd !== undefined) throw new UsageError(`--holidays "${odd}" is no day such as 2026-11-30`);
  return days;
}
