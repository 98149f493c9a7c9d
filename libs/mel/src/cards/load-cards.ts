/** Loads a library of work cards: foreign content in, checked and frozen cards out, or every reason why not. */
import { isDay } from '../checks/numbers.js';
import { deepFreeze } from '../deep-freeze.js';
import { errorsOf, MOST_ERRORS, type MelError } from '../mel-error.js';
import { plainCopy } from '../plain-copy.js';
import { readPlainYaml } from '../plain-yaml.js';
import { findingsAgainst } from '../schema-findings.js';
import type { CardLibraryContent } from './card.js';
import { CARDS_SCHEMA } from './cards-schema.js';
import { cardFindings } from './check-cards.js';

export type LoadedCards = { library: CardLibraryContent } | { errors: MelError[] };

const schemaFindings = findingsAgainst(CARDS_SCHEMA);

/** `value` is a parsed file, not trusted; `file` only names it in errors. Never throws on bad content. */
export const loadCards = (value: unknown, file: string): LoadedCards => {
  const copied = plainCopy(value);
  if ('finding' in copied) return { errors: errorsOf(file, null, [copied.finding]) };
  const misshapen = schemaFindings(copied.copy);
  if (misshapen.length > 0) return { errors: errorsOf(file, copied.copy, misshapen) };
  // The schema has just said so.
  const library = copied.copy as CardLibraryContent;
  const { effectiveOn, cards } = library;
  const day = isDay(effectiveOn)
    ? []
    : [{ path: ['effectiveOn'], reason: `"${effectiveOn}" is not a day of the calendar` }];
  const findings = [...day, ...cardFindings(cards, 'library')];
  return findings.length > 0 ? { errors: errorsOf(file, library, findings) } : { library: deepFreeze(library) };
};

/** `text` is the whole file, YAML or JSON, not trusted; at most 5 million characters. Never throws on bad content. */
export const readCards = (text: string, file: string): LoadedCards => {
  const read = readPlainYaml(text);
  if ('value' in read) return loadCards(read.value, file);
  return { errors: read.problems.slice(0, MOST_ERRORS).map((reason) => ({ file, entry: null, field: '', reason })) };
};
