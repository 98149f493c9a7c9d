/** The text of an invented MEL of plain lights, as a MEL engineer would load it: a journey states only what matters to it. */
import { stringify } from 'yaml';
import type { Row } from '#mel';

interface PlainItem {
  number: string;
  title?: string;
  category: string;
  /** Of category A, as the file writes it. */
  interval?: string;
  /** One, called `1`, unless given; all of them may be inoperative. */
  units?: string[];
  provisos?: Row['provisos'];
}

/** YAML in the format of MEL files; operator as the file names it, effective from the first days of 2026. */
export function plainList(operator: string, items: readonly PlainItem[], revision = '1'): string {
  return stringify({
    format: 'proviso-mel/1',
    document: 'Invented list',
    operator,
    aircraftType: 'Ambrel',
    revision,
    effectiveOn: `2026-01-0${revision}`,
    notice: 'Invented. Never for flight.',
    entries: items.map(({ number, title = `Item ${number}`, units = ['1'], ...row }) => ({
      number,
      title,
      chapter: '33',
      words: ['light'],
      subEntries: [
        {
          id: 'all',
          units,
          rows: [
            { id: '1', ...row, numberInstalled: units.length, numberRequired: 0, remarks: 'May be inoperative.' },
          ],
        },
      ],
    })),
  });
}
