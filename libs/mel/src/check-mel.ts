/** What the command `mel check FILE` says about a file: every error, or what the file holds. */
import type { MelError } from './mel-error.js';
import { readMel } from './read-mel.js';

export interface MelCheck {
  file: string;
  findings: MelError[];
  /** Null when there are findings: then nothing was loaded. */
  holds: {
    document: string;
    revision: string;
    aircraftType: string;
    entries: number;
    rows: number;
    /** `<entry>/<row>` of rows whose text is held only in part; no finding, but they never answer better than not settled. */
    incomplete: string[];
  } | null;
}

/** `text` is the whole file; `file` names it in the findings. */
export const checkMel = (text: string, file: string): MelCheck => {
  const loaded = readMel(text, file);
  if ('errors' in loaded) return { file, findings: loaded.errors, holds: null };
  const { document, revision, aircraftType } = loaded.mel.content;
  const rows = loaded.mel.entries.flatMap(({ number, subEntries }) =>
    subEntries.flatMap((subEntry) => subEntry.rows.map((row) => ({ key: `${number}/${row.id}`, row }))),
  );
  const incomplete = rows.filter(({ row }) => row.incomplete !== undefined).map(({ key }) => key);
  const entries = loaded.mel.entries.length;
  return { file, findings: [], holds: { document, revision, aircraftType, entries, rows: rows.length, incomplete } };
};

/** One finding as a line: file, entry or card and step, place, reason. */
export const findingLine = ({ file, entry, card, step, field, reason }: MelError): string =>
  [
    file,
    ...(entry === null ? [] : [`entry ${entry}`]),
    ...(card === undefined ? [] : [`card ${card}`]),
    ...(step === undefined ? [] : [`step ${step}`]),
    ...(field === '' ? [] : [field]),
    reason,
  ].join(': ');
