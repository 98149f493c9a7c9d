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
  const stored = defect.deadline?.endsAt ?? null;
  const until = stored === null ? '' : `until ${stored}`;
  if (!isOnRow(item)) {
    const sentence = stored === null ? 'It has no interval here.' : `It runs ${until}.`;
    return { ...named, endsAt: stored, sentence, limits: [] };
  }
  const clock = clockInUse(item, defect, frame);
  const at =
    millisOf('at', frame.departsAt) < millisOf('recordedAt', clock.recordedAt) ? clock.recordedAt : frame.departsAt;
  const left = whatIsLeft(clock, at, defect.used ?? {}, frame.counting);
  const counted = left.limits.filter(({ limit }) => stored === null || limit.unit !== 'calendar-days');
  const limits = counted.map(({ text, countedIn, left: some }) => ({ text, countedIn, left: some }));
  const parts = [...limits.map(({ text }) => text), ...(stored === null ? [] : [until])];
  return { ...named, endsAt: stored ?? left.endsAt, sentence: `${parts.join('; ')}.`, limits };
}

function isOnRow(item: Item): item is RowItem {
  return item.entry !== null && item.subEntry !== null && item.row !== null && item.defect?.basis === undefined;
}
