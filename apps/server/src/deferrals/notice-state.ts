/**
 * The notice that a granted extension owes the authority. It is due by its time, sent with a reference, and acknowledged.
 * One that is overdue is told apart by its word, not by a colour alone. Operations specification D095; ORO.MLR.105(f).
 */
import type { ExtensionRow } from '#store';
import { sayInstant } from './say-time.js';

export type NoticeCode = 'none' | 'due' | 'overdue' | 'sent' | 'acknowledged';

export interface NoticeState {
  state: NoticeCode;
  words: string;
  /** True when it was not sent by its time. */
  late: boolean;
}

type Noticed = Pick<
  ExtensionRow,
  'noticeDueAt' | 'sentAt' | 'sentReference' | 'acknowledgedAt' | 'acknowledgedReference'
>;

export function noticeState(extension: Noticed, now: string, base: string): NoticeState {
  const { noticeDueAt, sentAt, sentReference, acknowledgedAt, acknowledgedReference } = extension;
  const late = noticeDueAt !== null && Date.parse(sentAt ?? now) > Date.parse(noticeDueAt);
  const due = noticeDueAt === null ? '' : sayInstant(noticeDueAt, base);
  if (sentAt === null) {
    if (noticeDueAt === null) return { state: 'none', words: 'the rules in force ask for no notice', late };
    if (late) return { state: 'overdue', words: `OVERDUE: was due by ${due} and is not sent`, late };
    return { state: 'due', words: `due by ${due}`, late };
  }
  const sent = `sent ${sayInstant(sentAt, base)}, reference ${sentReference ?? '-'}${late ? `, LATE: was due by ${due}` : ''}`;
  if (acknowledgedAt === null) return { state: 'sent', words: `${sent}; not acknowledged yet`, late };
  const acknowledged = `acknowledged ${sayInstant(acknowledgedAt, base)}, reference ${acknowledgedReference ?? '-'}`;
  return { state: 'acknowledged', words: `${sent}; ${acknowledged}`, late };
}
