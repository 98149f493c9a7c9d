/**
 * Conditions that come from outside a MEL, with another basis. They are read by the MEL loader itself, as the provisos
 * of one more row, so that they are checked exactly as those are.
 */
import { loadMel, type Finding, type Mel, type Proviso } from '#mel';

const NUMBER = 'conditions of another basis';

/** The checked conditions, or what is wrong with them (paths below the list). Never throws on bad content. */
export function readConditions(mel: Mel, conditions: unknown): { conditions: Proviso[] } | { findings: Finding[] } {
  if (Array.isArray(conditions) && conditions.length === 0) return { conditions: [] };
  const { content } = mel;
  let number = NUMBER;
  while (mel.entry(number) !== undefined) number += '.';
  const row = { id: '1', category: 'C', numberRequired: 0, remarks: NUMBER, provisos: conditions };
  const entry = { number, title: NUMBER, chapter: '00', subEntries: [{ id: '1', units: ['1'], rows: [row] }] };
  const loaded = loadMel({ ...content, entries: [...content.entries, entry] }, '');
  if ('mel' in loaded) return { conditions: loaded.mel.entry(number)?.subEntries[0]?.rows[0]?.provisos ?? [] };
  const place = `/entries/${content.entries.length}/subEntries/0/rows/0/provisos`;
  return {
    findings: loaded.errors.map(({ field, reason }) => ({
      path: field.startsWith(place) ? field.slice(place.length).split('/').slice(1) : [],
      reason,
    })),
  };
}
