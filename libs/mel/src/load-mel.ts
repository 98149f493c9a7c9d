/**
 * Loads a MEL: foreign content in, a checked and frozen registry out, or every reason why not.
 *
 * Half a MEL is worse than none, so a file with one error loads nothing.
 */
import { configurationFindings } from './checks/configurations.js';
import { depthFindings } from './checks/depth.js';
import { intervalFindings } from './checks/intervals.js';
import { leafFindings } from './checks/leaves.js';
import { nameFindings } from './checks/names.js';
import { numberFindings } from './checks/numbers.js';
import { polarityFindings } from './checks/polarity.js';
import { referenceFindings } from './checks/references.js';
import { systemFindings } from './checks/systems.js';
import { cardFindings } from './cards/check-cards.js';
import { cardEntryFindings } from './cards/check-entries.js';
import { procedureCardFindings } from './cards/check-procedure-cards.js';
import type { MelContent } from './content.js';
import { deepFreeze } from './deep-freeze.js';
import { Mel } from './mel.js';
import { errorsOf, type Finding, type MelError } from './mel-error.js';
import { plainCopy } from './plain-copy.js';
import { schemaFindings } from './schema-findings.js';

export type LoadedMel = { mel: Mel } | { errors: MelError[] };

const CHECKS: readonly ((content: MelContent) => Finding[])[] = [
  nameFindings,
  numberFindings,
  systemFindings,
  intervalFindings,
  configurationFindings,
  referenceFindings,
  depthFindings,
  leafFindings,
  polarityFindings,
  ({ cards }) => cardFindings(cards ?? [], 'mel'),
  (content) => cardEntryFindings(content.cards ?? [], content),
  procedureCardFindings,
];

/** A row that does not say how many are installed means the units its sub-entry names. */
const withNumbersInstalled = (content: MelContent): MelContent => ({
  ...content,
  entries: content.entries.map((entry) => ({
    ...entry,
    subEntries: entry.subEntries.map((subEntry) => ({
      ...subEntry,
      rows: subEntry.rows.map((row) => ({ ...row, numberInstalled: row.numberInstalled ?? subEntry.units.length })),
    })),
  })),
});

/** `value` is a parsed file, not trusted; `file` only names it in errors. Never throws on bad content. */
export const loadMel = (value: unknown, file: string): LoadedMel => {
  const copied = plainCopy(value);
  if ('finding' in copied) return { errors: errorsOf(file, null, [copied.finding]) };
  const misshapen = schemaFindings(copied.copy);
  if (misshapen.length > 0) return { errors: errorsOf(file, copied.copy, misshapen) };
  // The schema has just said so.
  const content = withNumbersInstalled(copied.copy as MelContent);
  const findings = CHECKS.flatMap((check) => check(content));
  if (findings.length > 0) return { errors: errorsOf(file, content, findings) };
  return { mel: new Mel(deepFreeze(content)) };
};
