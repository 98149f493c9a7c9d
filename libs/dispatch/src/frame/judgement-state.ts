/** What a named person has answered to a question that only a person can settle; unknown until somebody has. */
import type { Role } from '#mel';
import { FF, TT, UU } from '../kleene.js';
import type { RecordedJudgement } from '../situation.js';
import type { NowAfter } from '../verdict.js';
import type { Frame } from './frame.js';
import { askedAgain } from './given-on.js';
import { millisOf } from './moment.js';
import { byCode } from '../units/unit.js';
import type { Until } from './until.js';

export interface PersonsAnswer extends NowAfter {
  because: string;
  until?: Until;
}

/** `role` is the one the question is addressed to; null accepts any (a condition that asks after another row's answer). */
export function personsAnswer(frame: Frame, judgement: string, role: Role | null): PersonsAnswer {
  const counted = frame.situation.judgements
    .filter((record) => record.judgement === judgement && counts(frame, record, role))
    .sort(byTimeThenRefusal);
  const latest = counted.findLast(({ givenOn }) => givenOn === undefined || askedAgain(frame, givenOn) === null);
  if (latest === undefined) return { ...UU, because: whyAsked(frame, counted.at(-1), role) };
  const because = `${latest.by} (${latest.role}) ${latest.accepted ? 'accepted' : 'did not accept'} it ${latest.at}`;
  const { validUntil } = latest;
  return {
    ...(latest.accepted ? TT : FF),
    because,
    ...(validUntil === undefined
      ? {}
      : { until: { at: validUntil, because: `the answer of ${latest.by} to ${judgement} ends` } }),
  };
}

function whyAsked(frame: Frame, former: RecordedJudgement | undefined, role: Role | null): string {
  const ask = role === null ? '' : `; ask ${role}`;
  if (former?.givenOn === undefined) return `no answer for this flight is recorded${ask}`;
  const { by, accepted, at, givenOn } = former;
  const since = askedAgain(frame, givenOn) ?? '';
  return `${by} ${accepted ? 'accepted' : 'did not accept'} it ${at}, but ${since}${ask}`;
}

function counts(frame: Frame, record: RecordedJudgement, role: Role | null): boolean {
  return (
    (role === null || record.role === role) &&
    millisOf('judgement.at', record.at) <= frame.at &&
    (record.forFlight === undefined || record.forFlight === frame.situation.flight?.id) &&
    (record.validUntil === undefined || millisOf('judgement.validUntil', record.validUntil) >= frame.departs)
  );
}

/** Of two answers at the same instant the refusal counts. */
function byTimeThenRefusal(a: RecordedJudgement, b: RecordedJudgement): number {
  const time = millisOf('judgement.at', a.at) - millisOf('judgement.at', b.at);
  return time || Number(b.accepted) - Number(a.accepted) || byCode(orderOf(a), orderOf(b));
}

function orderOf({ by, role, forFlight, validUntil }: RecordedJudgement): string {
  return [by, role, forFlight ?? '', validUntil ?? ''].join('\n');
}
