import type { SettingValue } from '../settings/setting.js';
import { settledBy, type SettlingOperator } from '../settings/settled.js';

/** How long an operator keeps its log, or its records of work, in months. */
export function monthsOf(operator: SettlingOperator, key: 'retentionLog' | 'retentionWork'): number {
  return monthsIn(settledBy(operator).find(({ setting }) => setting.key === key)?.value);
}

/** The longer of both periods: as long as either of them asks for what a person signed. */
export function monthsKept(operator: SettlingOperator): number {
  return Math.max(monthsOf(operator, 'retentionLog'), monthsOf(operator, 'retentionWork'));
}

/** The end of so many months after an instant, ISO 8601; a day that its month does not have runs into the next. */
export function monthsAfter(at: string, months: number): string {
  const end = new Date(at);
  end.setUTCMonth(end.getUTCMonth() + months);
  return end.toISOString();
}

function monthsIn(value: SettingValue | undefined): number {
  if (typeof value !== 'number') throw new Error('A period of keeping is a number of months.');
  return value;
}
