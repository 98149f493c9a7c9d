/** The conditions of an answer, sorted by what they ask of the reader. */
import type { Schemas } from '../api/client.js';
import { type Standing, standingOf } from '../words/words.js';

type Verdict = Schemas['Verdict'];

export interface WhyLine {
  key: string;
  /** Which item; null for the whole aircraft. */
  about: string | null;
  text: string;
  because: string;
}

/** Kinds whose own text says nothing that the reason does not. */
const SAID_BY_REASON = new Set(['number-required', 'interval', 'configuration', 'covers', 'directive', 'signed-row']);

/** Everything in one standing, the gates of the whole aircraft first. */
export function whyLines({ gates, items }: Pick<Verdict, 'gates' | 'items'>, standing: Standing): WhyLine[] {
  const ofAircraft = gates
    .filter((gate) => standingOf(gate) === standing)
    .map(({ gate, because }) => ({ key: gate, about: null, text: '', because }));
  const ofItems = items.flatMap((item) =>
    item.conditions
      .filter((condition) => standingOf(condition) === standing)
      .map(({ id, kind, text, because }) => ({
        key: `${id} ${item.unit}`,
        about: itemOf(item),
        text: SAID_BY_REASON.has(kind) ? '' : kind === 'procedure' ? workInShort(text) : text,
        because,
      })),
  );
  return [...ofAircraft, ...ofItems];
}

/** `Wing anti-ice valve L (30-11-21 row 1)` */
export function itemOf({ title, unit, entry, row, perhaps }: Verdict['items'][number]): string {
  const at = row === null ? entry : `${entry} row ${row}`;
  return `${title} ${unit} (${at})${perhaps ? ', if it is this one' : ''}`;
}

/** First sentence of a piece of work, without its steps. */
export function workInShort(text: string): string {
  return /^.+?[.!?](?=\s|$)/.exec(text)?.[0] ?? text;
}
