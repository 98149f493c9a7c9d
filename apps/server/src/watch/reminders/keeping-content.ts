/** What is told of periods of keeping that have passed: in a subject line, in a mail, and as an event for programs. */
import type { ReminderRow } from '#store';
import { sayInstant } from '../../deferrals/say-time.js';

/** Numbers alone: who or what it is about is read behind the sign-in. */
export interface KeepingContent {
  about: 'keeping';
  operator: { code: string; name: string };
  /** True for a demo operator. */
  invented: boolean;
  logs: number;
  defects: number;
  people: number;
  /** Erased by the program itself. */
  erased: number;
  /** The operator settled that the program erases leavers by itself. */
  erases: boolean;
  base: string;
  noticedAt: string;
}

export function isKeeping(content: object): content is KeepingContent {
  return (content as { about?: unknown }).about === 'keeping';
}

export const KEEPING_TITLE = 'Periods of keeping';

export function keepingSubject({ invented, operator }: KeepingContent): string {
  return `${invented ? '[invented] ' : ''}${KEEPING_TITLE} have passed at ${operator.code}`;
}

export function keepingSentence({ logs, defects, people, erased, erases }: KeepingContent): string {
  const parts = [
    counted(logs, 'log'),
    counted(defects, 'closed item'),
    people === 0 ? null : `${people === 1 ? '1 person' : `${people} people`} who left`,
  ].filter((part) => part !== null);
  const passed = parts.length === 0 ? [] : [`Newly past the period of keeping: ${parts.join(', ')}.`];
  const gone =
    erased === 0 ? [] : [`The personal data of ${erased === 1 ? '1 person' : `${erased} people`} were erased.`];
  const next = erases ? [] : ['Nothing was erased: a person decides that and signs.'];
  return [...passed, ...gone, ...next].join(' ');
}

export function keepingText(content: KeepingContent): string {
  const { invented, operator, base, noticedAt } = content;
  const lines = [
    ...(invented ? ['INVENTED for demonstration. Never for flight.', ''] : []),
    keepingSentence(content),
    'Open "Periods of keeping" under the record to see each, and to hold what must be kept longer.',
    '',
    `As things stood ${sayInstant(noticedAt, base)} at ${operator.name.replaceAll(/\s+/g, ' ')}.`,
  ];
  return `${lines.join('\n')}\n`;
}

/** CloudEvents 1.0, structured. */
export function keepingEvent(
  { id, noticedAt }: Pick<ReminderRow, 'id' | 'noticedAt'>,
  content: KeepingContent,
): string {
  return JSON.stringify({
    specversion: '1.0',
    id,
    source: `/operators/${encodeURIComponent(content.operator.code)}/record`,
    type: 'proviso.keeping.passed',
    time: noticedAt,
    datacontenttype: 'application/json',
    data: content,
  });
}

function counted(number: number, one: string): string | null {
  return number === 0 ? null : `${number} ${one}${number === 1 ? '' : 's'}`;
}
