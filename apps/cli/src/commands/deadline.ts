import {
  IntervalInputError,
  rectificationWindow,
  type Category,
  type ExtensionAnswer,
  type PresetName,
} from '#intervals';
import type { Command } from '../command.js';
import type { Deadline } from '../deadline-answer.js';
import { extensionOf } from '../deadline/asked-extension.js';
import { departureOf } from '../deadline/asked-flight.js';
import { askedSettings } from '../deadline/asked-settings.js';
import { askedUse } from '../deadline/asked-use.js';
import { DEADLINE_OPTIONS } from '../deadline/deadline-options.js';
import { statedStart } from '../deadline/stated-start.js';
import { needed, type Given } from '../options.js';
import { clockAt, remainingOf, usedBefore, useGiven } from '../remaining.js';
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
  deferredAt: '--deferred',
  start: '--counts-from',
  'flight.offBlockAt': '--depart',
  'flight.onBlockAt': '--arrive',
  'extension.days': '--extend-days',
};

export const deadline: Command = {
  name: 'deadline',
  summary: 'until when a defect must be rectified, what is left of that, and whether it may be extended',
  options: DEADLINE_OPTIONS,
  notes: ['An INSTANT is a date and time with Z or an offset, such as 2026-01-27T06:00Z.'],
  examples: [
    'deadline --category B --recorded 2027-03-27T10:00 --base Europe/Paris',
    'deadline --category A --interval "3 flight-days" --recorded 2026-01-26T10:00 --base UTC --movements messages.txt',
  ],
  onStray: 'a file goes after --movements',
  async run(given) {
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
  const [interval, deferredAt, engine] = ['interval', 'deferred', 'engine'].map((name) => options.get(name));
  const stated = statedStart(options.get('counts-from'));
  const clock = rectificationWindow({
    category: needed(given, 'category') as Category,
    recordedAt: needed(given, 'recorded'),
    base: needed(given, 'base'),
    tzdb: process.versions.tz ?? 'unknown',
    ...(interval !== undefined && { interval }),
    ...(deferredAt !== undefined && { deferredAt }),
    ...(engine !== undefined && { engine }),
    ...(stated !== undefined && { stated }),
    ...(preset !== undefined && { preset }),
  });
  const settings = askedSettings(preset, options.get('settings'));
  const extension = extensionOf(given, clock, preset);
  const use = await useGiven(options.get('movements'), askedUse(options.get('used')));
  const remaining = remainingOf(clock, extension, use, { at: options.get('at'), settings });
  const departure = departureOf(given, (depart) => {
    const used = usedBefore(clock, use, depart, settings);
    return { clock: clockAt(clock, extension, depart), used, settings };
  });
  const { firstDay, lastDay, startsAt, endsAt, lengthHours, base, tzdb, explanation } = clock;
  const value: Deadline = { firstDay, lastDay, startsAt, endsAt, lengthHours, base, tzdb, explanation };
  if (remaining) value.remaining = remaining;
  if (departure) value.departure = departure;
  if (extension) value.extension = withoutWindow(extension);
  return { value, words: deadlineWords(clock, value), exit: 0 as const };
}

/** The window with its new end is for a further calculation, not for the reader: all it says is in the answer. */
function withoutWindow(extension: ExtensionAnswer): Deadline['extension'] {
  if ('refused' in extension) return extension;
  const { window: _, ...rest } = extension;
  return rest;
}
