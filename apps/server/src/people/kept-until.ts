import type { SettingValue } from '../settings/setting.js';
import { settledBy, type SettlingOperator } from '../settings/settled.js';

/** The longer of the two periods that an operator keeps its log and its records of work, in months. */
export function monthsKept(operator: SettlingOperator): number {
  const months = settledBy(operator).flatMap(({ setting, value }) =>
    setting.key === 'retentionLog' || setting.key === 'retentionWork' ? [monthsIn(value)] : [],
  );
  return Math.max(...months);
}

/** The end of so many months after an instant, ISO 8601; a day that its month does not have runs into the next. */
export function monthsAfter(at: string, months: number): string {
  const end = new Date(at);
  end.setUTCMonth(end.getUTCMonth() + months);
  return end.toISOString();
}

function monthsIn(value: SettingValue): number {
  if (typeof value !== 'number') throw new Error('A period of keeping is a number of months.');
  return value;
}
