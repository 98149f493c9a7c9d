/** A correction in words: what reads otherwise, and what that moves. Nothing moves without being said before it is signed. */
import {
  type Act,
  correctionMoves,
  type CorrectableField,
  type CorrectableWord,
  type DefectLife,
  type LimitMoved,
} from '#deferrals';
import { IntervalInputError, readInstant } from '#intervals';
import { sayDay, sayInstant } from '../deferrals/say-time.js';
import { Problem } from '../http/problem.js';
import type { OperatorSettings } from '../people/operator-settings.js';

const NAMES: Readonly<Record<CorrectableField, string>> = {
  description: 'the description',
  sheet: 'the log sheet',
  system: 'the system (ATA chapter)',
  faultMessage: 'the message shown',
  occurredAt: 'the time it happened',
  recordedAt: 'the time in the log',
  where: 'the place',
  tag: 'the number',
};

const isTime = (field: CorrectableWord): boolean => field === 'occurredAt' || field === 'recordedAt';

/** @throws Problem when a time is none, a system is no two digits, or the words are longer than what they stand for */
function admitWord(field: CorrectableWord, now: string): void {
  if (field === 'system' && !/^\d\d$/.test(now)) throw misfit('must be two digits');
  if (field === 'sheet' && now.length > 40) throw misfit('has 40 characters at most');
  if (field === 'faultMessage' && now.length > 200) throw misfit('has 200 characters at most');
  if (!isTime(field)) return;
  try {
    readInstant('', now);
  } catch (error) {
    if (!(error instanceof IntervalInputError)) throw error;
    throw misfit('must be a real date and time with offset, such as 2026-01-26T10:00:00Z');
  }
}

function misfit(reason: string): Problem {
  return new Problem('invalid-input', `What it should read ${reason}.`, { errors: [{ pointer: '/now', reason }] });
}

export function correctionAsked(
  life: DefectLife,
  { field, now }: { field?: CorrectableWord; now?: string },
  settings: OperatorSettings,
): string {
  if (field === undefined || now === undefined) {
    const reason = 'a correction needs field and now';
    throw new Problem('invalid-input', reason, { errors: [{ pointer: '/field', reason }] });
  }
  admitWord(field, now);
  const { base } = settings.deferral;
  const was = life[field];
  const said = isTime(field) ? sayInstant : (words: string) => `"${words}"`;
  const reads = `${NAMES[field]} reads ${said(now, base)} in place of ${was === null ? 'nothing' : said(was, base)}.`;
  const moved = field === 'recordedAt' ? correctionMoves(life, now, settings.deferral) : null;
  return moved === null ? `${reads} No limit moves.` : `${reads} ${movedWords(moved, base)}`;
}

function movedWords({ before, after, counted, extended }: LimitMoved, base: string): string {
  const days =
    before.lastDay !== null && after.lastDay !== null && before.lastDay !== after.lastDay
      ? `The last day moves from ${sayDay(before.lastDay)} to ${sayDay(after.lastDay)}.`
      : before.endsAt === after.endsAt
        ? 'The fixed end of its limits stays.'
        : `The end moves from ${end(before.endsAt, base)} to ${end(after.endsAt, base)}.`;
  const more = [
    ...(counted ? ['What is counted from the use of the aircraft is counted anew from that time.'] : []),
    ...(extended ? ['The extension that was granted falls away.'] : []),
  ];
  return [days, ...more].join(' ');
}

const end = (at: string | null, base: string): string => (at === null ? 'no fixed end' : sayInstant(at, base));

/** What was put right in an act afterwards. */
export function correctionsOf({ acts }: DefectLife, { id }: Act) {
  return acts.flatMap((one) =>
    one.kind === 'corrected' && one.act === id
      ? [{ field: NAMES[one.field], was: one.was, now: one.now, by: one.by.name, at: one.enteredAt }]
      : [],
  );
}
