import type { RecordFinding } from '#store';
import type { Command } from '../command.js';
import { DATABASE } from '../options.js';
import { withDatabase } from '../database.js';
import { count, sayInstant } from '../words/say-time.js';

export const recordVerify: Command = {
  name: 'record verify',
  summary: 'whether anything in the record was altered, lost or put in',
  options: [DATABASE],
  examples: ['record verify'],
  exitsWithOne: 'something in a record was altered, lost or put in',
  async run(given) {
    const operators = await withDatabase(given.options.get('database'), async ({ ownerUrl }) => {
      const { verifyRecord } = await import('#store');
      return verifyRecord(ownerUrl);
    });
    const fits = operators.every(({ misfit }) => misfit === null);
    const now = new Date().toISOString();
    return { value: { fits, operators }, words: words(operators, now), exit: fits ? 0 : 1 };
  },
};

function words(operators: readonly RecordFinding[], now: string): string {
  if (operators.length === 0) return 'The database holds no operator, and so no record.';
  return operators.map((one) => `${operatorWords(one)} ${backupWords(one, now)}`).join('\n');
}

function operatorWords({ operatorCode, entries, head, waiting, misfit }: RecordFinding): string {
  const open = waiting === 0 ? '' : ` ${count(waiting, 'entry', 'entries')} written and not yet sealed.`;
  if (misfit !== null) {
    const place = misfit.number === null ? '' : ` at entry ${misfit.number}`;
    return `${operatorCode}: the record does not fit${place} (${misfit.kind}): ${misfit.sentence}${open}`;
  }
  return `${operatorCode}: ${count(entries, 'entry', 'entries')}, all fit. Head ${head.size} ${head.root}.${open}`;
}

const HOUR_MS = 3_600_000;
const LATE_AFTER_HOURS = 24;

/** AMC M.A.614(a) 5: at least one backup, brought up to date within 24 hours of any maintenance. */
function backupWords({ lastBackupAt, unsavedSince }: RecordFinding, now: string): string {
  if (lastBackupAt === null) return 'No backup is recorded.';
  const last = `Last backup ${sayInstant(lastBackupAt)}`;
  if (unsavedSince === null) return `${last}; nothing was entered since.`;
  const hours = Math.floor((Date.parse(now) - Date.parse(unsavedSince)) / HOUR_MS);
  const late = hours >= LATE_AFTER_HOURS ? `; at most ${LATE_AFTER_HOURS} h are allowed, make one now` : '';
  return `${last}; the oldest entry in no backup was made ${hours} h ago${late}.`;
}
