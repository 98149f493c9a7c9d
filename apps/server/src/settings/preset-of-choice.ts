import { CUSTOM, type NoticeRule, type Preset, presetOf } from '#intervals';
import type { PresetChoice } from './setting.js';

export function presetNamed(choice: PresetChoice): Preset {
  return choice === 'custom' ? CUSTOM : presetOf(choice);
}

const NOTICES: Record<string, NoticeRule | null> = {
  '24 hours': { hours: 24 },
  '72 hours': { hours: 72 },
  '1 working day': { workingDays: 1 },
  '10 days': { hours: 240 },
  '1 month': { months: 1 },
  none: null,
};

export const NOTICE_NAMES: readonly string[] = Object.keys(NOTICES);

export function noticeNamed(name: string): NoticeRule | null {
  return NOTICES[name] ?? null;
}

export function nameOfNotice(rule: NoticeRule | null): string {
  const same = JSON.stringify(rule);
  return NOTICE_NAMES.find((name) => JSON.stringify(NOTICES[name]) === same) ?? 'none';
}

/** How often one deferral may be extended. */
export const ANY_NUMBER = 'any number';

export function timesNamed(name: string): number | null {
  return name === ANY_NUMBER ? null : Number(name);
}
