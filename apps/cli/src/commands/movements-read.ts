import type { Command } from '../command.js';
import { movementsFrom } from '../movements-file.js';
import { UsageError } from '../usage-error.js';
import { movementsWords } from '../words/movements-words.js';

export const movementsRead: Command = {
  name: 'movements read',
  summary: 'what an aircraft flew by its movement messages: events, legs, counters, and what could not be used',
  files: [{ name: 'FILE', about: 'movement messages, one or many, as they came' }],
  options: [
    {
      name: 'received',
      value: 'INSTANT',
      about: 'when they came, where the file does not say: they name a day and no month',
    },
  ],
  examples: ['movements read messages.txt --received 2026-11-28T06:00Z'],
  async run({ files: [file = ''], options }) {
    const received = options.get('received');
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
