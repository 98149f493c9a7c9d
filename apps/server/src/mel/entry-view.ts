import { CATEGORY_DAYS } from '#intervals';
import {
  type Entry,
  type Mel,
  type MelAircraft,
  type Row,
  searchEntries,
  type Source,
  type SubEntryMatch,
} from '#mel';

export function entryHits(mel: Mel, aircraft: MelAircraft, query: string) {
  return {
    query,
    hits: searchEntries(mel, aircraft, query).map(({ entry, because, applies }) => ({
      number: entry.number,
      title: entry.title,
      chapter: entry.chapter,
      applies: appliesInWords(applies),
      because: [...because],
    })),
  };
}

/** An entry as it reads for this aircraft; rows of another configuration are not shown, so that none is taken from there. */
export function entryView(entry: Entry, match: SubEntryMatch) {
  const subEntry = match.kind === 'one' ? match.subEntry : null;
  return {
    number: entry.number,
    title: entry.title,
    chapter: entry.chapter,
    applies: appliesInWords(match),
    because: becauseOf(match),
    units: [...(subEntry?.units ?? [])],
    source: sourceInWords(entry.source),
    rows: (subEntry?.rows ?? []).map(rowView),
  };
}

function rowView(row: Row) {
  return {
    id: row.id,
    category: row.category,
    interval: intervalInWords(row),
    numberInstalled: row.numberInstalled,
    numberRequired: row.numberRequired,
    covers: row.covers ? [...row.covers] : null,
    remarks: row.remarks,
    provisos: (row.provisos ?? []).map(({ id, text }) => ({ id, text })),
    procedures: [...(row.procedures ?? [])],
    placard: row.placard ? { ...row.placard } : null,
    notes: (row.notes ?? []).map(({ text }) => text),
    incomplete: row.incomplete ?? null,
  };
}

function intervalInWords(row: Row): string {
  if (row.intervalByUnit) {
    return Object.entries(row.intervalByUnit)
      .map(([unit, interval]) => `unit ${unit}: ${interval}`)
      .join('; ');
  }
  if (row.interval) return row.interval;
  return row.category === 'A' ? 'as the remarks say' : `${CATEGORY_DAYS[row.category]} calendar-days`;
}

function appliesInWords({ kind }: SubEntryMatch): 'yes' | 'no' | 'not known' {
  return kind === 'one' ? 'yes' : kind === 'none' ? 'no' : 'not known';
}

function becauseOf(match: SubEntryMatch): string {
  if (match.kind === 'one') return '';
  if (match.kind === 'none') return 'The entry is not written for the configuration of this aircraft.';
  return `Which configuration applies is not known: ${match.missing.join(', ') || 'several fit'}.`;
}

function sourceInWords(source: Source | undefined): string | null {
  if (!source) return null;
  const { document, revision, page, mark } = source;
  return [document, revision, page, mark].filter(Boolean).join(', ');
}
