import {
  countingSettings,
  DEFAULT_PRESET,
  extend,
  IntervalInputError,
  rectificationWindow,
  type Category,
  type ExtensionAnswer,
  type PresetName,
  type RectificationClock,
} from '#intervals';
import type { Command } from '../command.js';
import type { Deadline } from '../deadline-answer.js';
import { needed, readGiven, type Given } from '../options.js';
import { remainingOf } from '../remaining.js';
import { UsageError } from '../usage-error.js';
import { deadlineWords } from '../words/deadline-words.js';

/** The option that each argument of the calculation came from. */
const OPTION_OF: Record<string, string> = {
  category: '--category',
  recordedAt: '--recorded',
  base: '--base',
  interval: '--interval',
  preset: '--preset',
  at: '--at',
  grantedAt: '--extend-at',
};

export const deadline: Command = {
  name: 'deadline',
  takes:
    '--category A|B|C|D --recorded 2026-01-26T10:00 --base UTC|ZONE [--interval "3 flights or 6 flight-hours"] ' +
    '[--preset easa|faa|tcca-2006|tcca-2022] [--movements FILE] [--at INSTANT] [--extend-at INSTANT]',
  summary: 'until when a defect must be rectified, what is left of that, and whether it may be extended',
  async run(args) {
    const given = readGiven(args, [
      'category',
      'recorded',
      'base',
      'interval',
      'movements',
      'preset',
      'extend-at',
      'at',
    ]);
    const stray = given.files[0];
    if (stray !== undefined) throw new UsageError(`"${stray}" is one word too many; a file goes after --movements`);
    try {
      return await answer(given);
    } catch (error) {
      if (!(error instanceof IntervalInputError)) throw error;
      const place = OPTION_OF[error.field] ?? error.field;
      throw new UsageError(place + error.message.slice(error.field.length));
    }
  },
};

async function answer(given: Given) {
  const { options } = given;
  const preset = options.get('preset') as PresetName | undefined;
  const interval = options.get('interval');
  const clock = rectificationWindow({
    category: needed(given, 'category') as Category,
    recordedAt: needed(given, 'recorded'),
    base: needed(given, 'base'),
    tzdb: process.versions.tz ?? 'unknown',
    ...(interval !== undefined && { interval }),
    ...(preset !== undefined && { preset }),
  });
  const grantedAt = options.get('extend-at');
  const extension = grantedAt === undefined ? undefined : extensionOf(clock, grantedAt, preset);
  const remaining = await remainingOf(clock, extension, {
    at: options.get('at'),
    movements: options.get('movements'),
    settings: countingSettings(preset),
  });
  const { firstDay, lastDay, startsAt, endsAt, lengthHours, base, tzdb, explanation } = clock;
  const value: Deadline = { firstDay, lastDay, startsAt, endsAt, lengthHours, base, tzdb, explanation };
  if (remaining) value.remaining = remaining;
  if (extension) value.extension = withoutWindow(extension);
  return { value, words: deadlineWords(clock, value), exit: 0 as const };
}

/** Asked as by an operator who holds an approved procedure and has not yet extended this deferral. */
function extensionOf(
  clock: RectificationClock,
  grantedAt: string,
  preset: PresetName = DEFAULT_PRESET,
): ExtensionAnswer {
  return extend({ preset, window: clock, grantedAt, alreadyExtended: 0, procedureHeld: true });
}

/** The window with its new end is for a further calculation, not for the reader: all it says is in the answer. */
function withoutWindow(extension: ExtensionAnswer): Deadline['extension'] {
  if ('refused' in extension) return extension;
  const { window: _, ...rest } = extension;
  return rest;
}
