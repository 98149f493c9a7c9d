/** What the interval of each open defect leaves at a departure. Shown as it is, never maximised. */
import { whatIsLeft } from '#intervals';
import { clockInUse } from '../conditions/interval.js';
import type { Item, RowItem } from '../conditions/item.js';
import type { Frame } from '../frame/frame.js';
import { millisOf } from '../frame/moment.js';
import type { OpenDefect } from '../situation.js';
import type { LeftOfDefect } from './next-flights.js';
import type { Leg } from './fly-plan.js';

export function leftAt({ judged, frame }: Leg): LeftOfDefect[] {
  const items = judged?.groups.flatMap((group) => group.items) ?? [];
  const seen = new Set<string>();
  return items.flatMap(({ item }) => {
    const { defect } = item;
    if (defect === null || seen.has(defect.id)) return [];
    seen.add(defect.id);
    return [leftOf(item, defect, frame)];
  });
}

function leftOf(item: Item, defect: OpenDefect, frame: Frame): LeftOfDefect {
  const named = { defect: defect.id, entry: defect.entry, row: item.row?.id ?? null };
  const { endsAt: stored = null, lastDay } = defect.deadline ?? {};
  const until = lastDay === undefined ? `until ${stored ?? ''}` : `its last day is ${lastDay}`;
  if (!isOnRow(item)) {
    const sentence = stored === null ? 'It has no interval here.' : `${until}.`;
    return { ...named, endsAt: stored, sentence, limits: [] };
  }
  const clock = clockInUse(item, defect, frame);
  const recorded = millisOf('recordedAt', clock.recordedAt);
  const at = frame.departs < recorded ? clock.recordedAt : frame.departsAt;
  const left = whatIsLeft(clock, at, defect.used ?? {}, frame.counting);
  // Once it was extended, or an earlier row still binds, the days of the row are not those that are left.
  const isOwn = stored === null || left.endsAt === null || isSame(stored, left.endsAt);
  const counted = left.limits.filter(({ limit }) => isOwn || limit.unit !== 'calendar-days');
  const limits = counted.map(({ text, countedIn, left: some }) => ({ text, countedIn, left: some }));
  const former = formerLeft(defect, at, frame);
  const parts = [...limits.map(({ text }) => text), ...former, ...(isOwn ? [] : [until])];
  return { ...named, endsAt: stored ?? left.endsAt, sentence: `${parts.join('; ')}.`, limits };
}

/** What rows signed before still leave of flights, days, hours or cycles. */
function formerLeft({ formerLimits = [], used = {} }: OpenDefect, at: string, frame: Frame): string[] {
  return formerLimits.flatMap(({ clock }) =>
    whatIsLeft(clock, at, used, frame.counting)
      .limits.filter(({ limit }) => limit.unit !== 'calendar-days')
      .map(({ text }) => `${text} by a row signed before`),
  );
}

function isSame(one: string, other: string): boolean {
  return millisOf('endsAt', one) === millisOf('endsAt', other);
}

function isOnRow(item: Item): item is RowItem {
  return item.entry !== null && item.subEntry !== null && item.row !== null && item.defect?.basis === undefined;
}
