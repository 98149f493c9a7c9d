import type { Binding } from '#store';
import { Problem } from '../http/problem.js';
import type { SettingValue } from '../settings/setting.js';
import { settledBy, type SettlingOperator } from '../settings/settled.js';

/** How long an operator keeps its log, or its records of work, in months. */
export function monthsOf(operator: SettlingOperator, key: 'retentionLog' | 'retentionWork'): number {
  return monthsIn(settledBy(operator).find(({ setting }) => setting.key === key)?.value);
}

/** Whether the program erases leavers by itself. */
export function eraseLeaversSettled(operator: SettlingOperator): boolean {
  return settledBy(operator).find(({ setting }) => setting.key === 'eraseLeavers')?.value === true;
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

/**
 * The personal data of somebody are bound while the person works, while anything of the person is held, while an item with an
 * entry of the person is open, and until the periods of what the person left behind have passed, for every operator.
 * @throws Problem saying which
 */
export function refuseWhileBound(bindings: readonly Binding[], at: string): void {
  if (bindings.some(({ validUntil }) => validUntil === null || validUntil > at)) {
    throw new Problem('still-works', 'The person works here, or for another operator on this server.');
  }
  const held = named(bindings.flatMap((one) => one.held));
  if (held !== '') throw new Problem('under-hold', `Held: ${held}.`);
  const open = named(bindings.flatMap(({ openItems }) => openItems));
  if (open !== '') throw new Problem('item-open', `Open, with an entry of the person: ${open}.`);
  const until = bindings.flatMap(endsOf).toSorted().at(-1) ?? at;
  if (until > at) throw new Problem('retention-binds', `It has to be kept until ${until}.`, { until });
}

/** Each once: what other operators have is told in the same words for all of them. */
const named = (names: readonly string[]): string => [...new Set(names)].join(', ');

/** Of the person's time at the operator, and of the last item with an entry of the person. */
function endsOf({ validUntil, lastClosedAt, ...operator }: Binding): string[] {
  const left = validUntil === null ? [] : [monthsAfter(validUntil, monthsKept(operator))];
  return lastClosedAt === null ? left : [...left, monthsAfter(lastClosedAt, monthsOf(operator, 'retentionWork'))];
}

function monthsIn(value: SettingValue | undefined): number {
  if (typeof value !== 'number') throw new Error('A period of keeping is a number of months.');
  return value;
}
