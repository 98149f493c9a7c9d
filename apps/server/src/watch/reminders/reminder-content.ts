/** What a reminder says, fixed when it is noticed: in a subject line, in a mail, and as an event for programs. */
import type { ReminderRow } from '#store';
import { sayDay, sayInstant } from '../../deferrals/say-time.js';

export interface ReminderContent {
  operator: { code: string; name: string };
  /** True for a demo operator. */
  invented: boolean;
  aircraft: string;
  registration: string;
  defect: string;
  /** `Q-KEA/3`. */
  number: string;
  title: string;
  basis: string | null;
  /** Percent that the operator asked to be reminded at; 0 is the end. */
  share: number;
  /** Percent that were really left when it was noticed, rounded up. */
  leftPercent: number;
  /** What is left, each limit in its own unit. */
  left: string;
  overdue: boolean | null;
  lastDay: string | null;
  endsAt: string | null;
  base: string;
  noticedAt: string;
}

const CAUTION =
  'Rectify as soon as practicable; this is the latest, not the plan. Proviso supports, and never replaces, the approved MEL, the maintenance manual, the commander and licensed certifying staff. Local regulation prevails.';

export function subjectOf({ number, title, leftPercent, overdue, lastDay, invented }: ReminderContent): string {
  const left = overdue === true ? 'its interval is over' : `${leftPercent} % left`;
  const end = lastDay === null ? '' : `, last day ${sayDay(lastDay)}`;
  return oneLine(`${invented ? '[invented] ' : ''}${number} ${title}: ${left}${end}`);
}

export function textOf(content: ReminderContent): string {
  const { operator, invented, number, title, basis, left, endsAt, base, lastDay, noticedAt } = content;
  const lines = [
    ...(invented ? ['INVENTED for demonstration. Never for flight.', ''] : []),
    oneLine(`${number} ${title}`),
    ...(basis === null ? [] : [oneLine(`Deferred under ${basis}.`)]),
    `What is left: ${oneLine(left)}`,
    ...(endsAt === null ? [] : [`To be rectified before ${sayInstant(endsAt, base)}.`]),
    ...(lastDay === null ? [] : [`Last day: ${sayDay(lastDay)}.`]),
    '',
    `As things stood ${sayInstant(noticedAt, base)} at ${oneLine(operator.name)}.`,
    CAUTION,
  ];
  return `${lines.join('\n')}\n`;
}

/** CloudEvents 1.0, structured: source and id together name it once and for all. */
export function eventOf({ id, defectId, noticedAt }: ReminderRow, content: ReminderContent): string {
  return JSON.stringify({
    specversion: '1.0',
    id,
    source: `/operators/${encodeURIComponent(content.operator.code)}/deferrals`,
    type: 'proviso.deferral.share-reached',
    subject: defectId,
    time: noticedAt,
    datacontenttype: 'application/json',
    data: { ...content, caution: CAUTION },
  });
}

/** Somebody else's words never begin a line of a mail. */
function oneLine(text: string): string {
  return text.replaceAll(/[\s\p{Cc}\u2028\u2029]+/gu, ' ').trim();
}
