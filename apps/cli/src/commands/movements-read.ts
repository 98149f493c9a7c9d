import type { Command } from '../command.js';
import { movementsFrom } from '../movements-file.js';
import { filesOf, readGiven } from '../options.js';
import { UsageError } from '../usage-error.js';
import { movementsWords } from '../words/movements-words.js';

export const movementsRead: Command = {
  name: 'movements read',
  takes: 'FILE [--received INSTANT]',
  summary: 'what an aircraft flew by its movement messages: events, legs, counters, and what could not be used',
  async run(args) {
    const given = readGiven(args, ['received']);
    const [file = ''] = filesOf(given, 'FILE');
    const received = given.options.get('received');
    try {
      const read = await movementsFrom(file, received);
      return { value: read, words: movementsWords(read, file), exit: 0 };
    } catch (error) {
      // The one setting that comes from the call.
      if (error instanceof RangeError) throw new UsageError(`--received: ${error.message}`);
      throw error;
    }
  },
};
