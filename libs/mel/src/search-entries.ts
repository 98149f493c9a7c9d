/**
 * Finds the entries a technician may mean: by number, words, chapter, title or fault message.
 *
 * Every hit says why it matched and whether the entry is written for this aircraft, since the row of another
 * configuration looks just as right. The order depends on content and query alone.
 */
import type { Entry } from './content.js';
import type { MelAircraft, SubEntryMatch } from './match-sub-entry.js';
import type { Mel } from './mel.js';
import { bare, indexOf, type IndexedEntry } from './search-index.js';
import { nearlyEqual, wordsOf } from './words.js';

export interface SearchHit {
  entry: Entry;
  /** Why it matched, the strongest reason first. */
  because: string[];
  applies: SubEntryMatch;
}

const LONGEST_QUERY = 200;
const MOST_WORDS = 20;
const MOST_HITS = 50;
const SHORTEST_START = 3;

interface Reason {
  /** Higher is stronger. */
  weight: number;
  text: string;
}

/** How one word of the query is found among the words of one field. */
const inField = (word: string, field: readonly string[], name: string, weight: number): Reason[] => {
  if (field.includes(word)) return [{ weight, text: `${name} has "${word}"` }];
  const longer = word.length < SHORTEST_START ? undefined : field.find((one) => one.startsWith(word));
  if (longer !== undefined) return [{ weight: weight * 0.6, text: `${name} has "${longer}"` }];
  const near = field.find((one) => nearlyEqual(word, one));
  return near === undefined ? [] : [{ weight: weight * 0.4, text: `${name} has "${near}", nearly "${word}"` }];
};

const strongest = (reasons: readonly Reason[]): Reason | undefined =>
  reasons.reduce<Reason | undefined>(
    (best, reason) => (best === undefined || reason.weight > best.weight ? reason : best),
    undefined,
  );

const reasonForWord = (word: string, indexed: IndexedEntry): Reason | undefined => {
  const { entry, title, words, messages, system } = indexed;
  return strongest([
    ...inField(word, title, 'title', 100),
    ...inField(word, words, 'a word of the entry', 90),
    ...messages.flatMap(({ message, words: ofMessage }) =>
      inField(word, ofMessage, `fault message "${message}"`, 70),
    ),
    ...(word === entry.chapter ? [{ weight: 80, text: `chapter ${entry.chapter}` }] : []),
    ...(word === entry.jasc ? [{ weight: 85, text: `JASC code ${entry.jasc}` }] : []),
    ...inField(word, system, 'system', 20),
  ]);
};

/** Reasons that look at the whole query, not at its single words. */
const reasonForWhole = (query: string, words: readonly string[], indexed: IndexedEntry): Reason | undefined => {
  const digits = bare(query);
  const message = indexed.messages.find((one) => one.words.join(' ') === words.join(' '));
  return strongest([
    ...(indexed.number === digits ? [{ weight: 10_000, text: `number ${indexed.entry.number}` }] : []),
    ...(message === undefined ? [] : [{ weight: 9_000, text: `fault message "${message.message}"` }]),
    ...(/\d/.test(digits) && digits.length > 2 && indexed.number.startsWith(digits)
      ? [{ weight: 8_000, text: `number ${indexed.entry.number} begins so` }]
      : []),
  ]);
};

interface Ranked {
  hit: SearchHit;
  found: number;
  weight: number;
}

const APPLIES_ORDER: Record<SubEntryMatch['kind'], number> = { one: 0, unknown: 1, none: 2 };

const byRank = (left: Ranked, right: Ranked): number =>
  right.found - left.found ||
  right.weight - left.weight ||
  APPLIES_ORDER[left.hit.applies.kind] - APPLIES_ORDER[right.hit.applies.kind] ||
  (left.hit.entry.number < right.hit.entry.number ? -1 : 1);

/** At most 50 hits, best first; none for a query without letters or digits. Only the first 200 characters are read. */
export const searchEntries = (mel: Mel, aircraft: MelAircraft, query: string): SearchHit[] => {
  const asked = query.slice(0, LONGEST_QUERY);
  const words = [...new Set(wordsOf(asked))].slice(0, MOST_WORDS);
  if (words.length === 0) return [];
  const ranked = indexOf(mel).flatMap((indexed): Ranked[] => {
    const whole = reasonForWhole(asked, wordsOf(asked), indexed);
    const single = words.flatMap((word) => reasonForWord(word, indexed) ?? []);
    const reasons = [...(whole === undefined ? [] : [whole]), ...single].sort((one, two) => two.weight - one.weight);
    if (reasons.length === 0) return [];
    const { entry } = indexed;
    const because = [...new Set(reasons.map(({ text }) => text))];
    return [
      {
        hit: { entry, because, applies: mel.matchSubEntry(entry.number, aircraft) },
        found: whole === undefined ? single.length : words.length,
        weight: reasons.reduce((sum, { weight }) => sum + weight, 0),
      },
    ];
  });
  return ranked
    .sort(byRank)
    .slice(0, MOST_HITS)
    .map(({ hit }) => hit);
};
