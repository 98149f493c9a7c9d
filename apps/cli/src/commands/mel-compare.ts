import { compareMel, type Mel, type MelChange } from '#mel';
import type { Command } from '../command.js';
import { headOf, melFrom } from '../mel-file.js';
import { count } from '../words/say-time.js';
import { placeWords } from '../words/place-words.js';

const WEIGHED: Record<MelChange['weighing'], string> = {
  'less-restrictive': 'less restrictive',
  'more-restrictive': 'more restrictive',
  unclear: 'to be weighed by a person',
  'text-only': 'text only',
};

export const melCompare: Command = {
  name: 'mel compare',
  summary: 'what a later revision of a MEL changes, each change weighed',
  files: [
    { name: 'OLD', about: 'file of the earlier revision' },
    { name: 'NEW', about: 'file of the later one' },
  ],
  options: [],
  examples: ['mel compare mel-7.yaml mel-8.yaml'],
  async run({ files: [oldFile = '', newFile = ''] }) {
    const [before, after] = [await melFrom(oldFile), await melFrom(newFile)];
    const changes = compareMel(before, after);
    return {
      value: { old: headOf(before), new: headOf(after), changes },
      words: words(before, after, changes),
      exit: 0,
    };
  },
};

function words(before: Mel, after: Mel, changes: readonly MelChange[]): string {
  const [one, other] = [before.content, after.content];
  return [
    `${one.document}, revision ${one.revision}, against ${other.document}, revision ${other.revision}: ${count(changes.length, 'change')}.`,
    ...changes.map(
      (change) => `  ${placeWords(change)}: ${change.what}, ${WEIGHED[change.weighing]}: ${change.reason}`,
    ),
  ].join('\n');
}
