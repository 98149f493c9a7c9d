/** Moves the end of each signed limit by its own interval. ORO.MLR.105(f): at most the interval of the operator's list. */
import { extend, presetOf, type CalendarClock, type Extension, type ExtensionRefused } from '#intervals';
import type { DeferralSettings } from '../context.js';
import { needZoneData } from '../zone-data.js';
import { readingIntervals } from '../deferring/reading-intervals.js';
import type { DefectLife } from '../defect-life.js';
import { latest } from '../instant.js';
import { Refusal } from '../refusal.js';
import type { SignedLimit } from '../signed-limit.js';

export interface GrantAsked {
  grantedAt: string;
  /** Calendar days to add; absent: the longest allowed. */
  days?: number;
  agreement?: string;
}

export interface LimitsExtended {
  limits: SignedLimit[];
  noticeDueAt: string | null;
}

/** Under an approved procedure. Throws Refusal when the rules in force do not let the operator extend one of them. */
export function extendLimits(life: DefectLife, asked: GrantAsked, settings: DeferralSettings): LimitsExtended {
  needZoneData(settings);
  const notices: string[] = [];
  const limits = life.limits.map((limit) => {
    if (limit.clock === null) return limit;
    const { window, noticeDueAt } = extendOne(life, limit.clock, asked, settings);
    if (noticeDueAt !== null) notices.push(noticeDueAt);
    return { ...limit, clock: window };
  });
  const [first, ...more] = notices;
  return { limits, noticeDueAt: first === undefined ? null : latest(first, ...more) };
}

function extendOne(
  life: DefectLife,
  window: NonNullable<SignedLimit['clock']>,
  { grantedAt, days, agreement }: GrantAsked,
  { preset }: DeferralSettings,
): { window: CalendarClock; noticeDueAt: string | null } {
  const answer = readingIntervals(() =>
    extend({
      preset,
      window,
      grantedAt,
      alreadyExtended: life.extensions.length,
      procedureHeld: true,
      ...(days === undefined ? {} : { days }),
      ...(agreement === undefined ? {} : { authorityAgreement: agreement }),
    }),
  );
  if ('refused' in answer) throw refusalOf(life, window, grantedAt, preset, answer);
  return answer satisfies Extension;
}

function refusalOf(
  { defect, extensions }: DefectLife,
  { category, endsAt }: NonNullable<SignedLimit['clock']>,
  grantedAt: string,
  preset: DeferralSettings['preset'],
  { refused, because }: ExtensionRefused,
): Refusal {
  switch (refused) {
    case 'category-a':
      return new Refusal('category-a-not-extendable', { defect });
    case 'no-approved-procedure':
      return new Refusal('no-extension-procedure', {});
    case 'category-not-extendable':
      return new Refusal('category-not-extendable', {
        category,
        allowed: presetOf(preset).extension.categories.value,
      });
    case 'already-extended':
      return new Refusal('second-extension', { defect, extendedAt: extensions.at(-1)?.enteredAt ?? '' });
    case 'after-expiry':
      return new Refusal('extension-after-expiry', { endedAt: endsAt ?? '', grantedAt });
    case 'needs-authority-agreement':
      return new Refusal('extension-needs-agreement', {});
    case 'before-record':
    case 'longer-than-interval':
      return new Refusal('extension-too-long', { because });
  }
}
