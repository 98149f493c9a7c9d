/** The words of a MEL's entries, gathered once for each loaded MEL. */
import type { Entry } from './content.js';
import { systemOf } from './jasc.js';
import type { Mel } from './mel.js';
import { wordsOf } from './words.js';

export interface IndexedEntry {
  entry: Entry;
  /** The number's digits and letters alone, so that "324201" finds 32-42-01. */
  number: string;
  title: readonly string[];
  words: readonly string[];
  /** Each message as written, and its words. */
  messages: readonly { message: string; words: readonly string[] }[];
  system: readonly string[];
}

export const bare = (text: string): string => wordsOf(text).join('');

const indexed = (entry: Entry): IndexedEntry => ({
  entry,
  number: bare(entry.number),
  title: wordsOf(entry.title),
  words: (entry.words ?? []).flatMap(wordsOf),
  messages: (entry.faultMessages ?? []).map((message) => ({ message, words: wordsOf(message) })),
  system: [systemOf(entry.chapter)?.title, systemOf(entry.jasc ?? '')?.title].flatMap((title) =>
    wordsOf(title ?? ''),
  ),
});

const indexes = new WeakMap<Mel, readonly IndexedEntry[]>();

export const indexOf = (mel: Mel): readonly IndexedEntry[] => {
  const known = indexes.get(mel);
  if (known !== undefined) return known;
  const made = mel.entries.map(indexed);
  indexes.set(mel, made);
  return made;
};
