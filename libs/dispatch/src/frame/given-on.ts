/**
 * A judgement is given on certain items, a certain route, and facts as they were known. It holds for every subset of the
 * items under the same rows; it is asked again on a new item or a changed row, on another route, and where a fact it was
 * given on reads otherwise or has expired by the departure. Items marked as without interaction stay out.
 */
import { readFactKey } from '#mel';
import { Possible, Unknown } from '../evaluate/marker.js';
import type { GivenOn, OpenDefect } from '../situation.js';
import type { Frame } from './frame.js';

/** Why it is asked again, as the end of a sentence; null while it still holds. */
export function askedAgain(frame: Frame, { items, flights }: GivenOn): string | null {
  const fresh = frame.defects.find((defect) => interacts(frame, defect) && !isAmong(items, defect));
  if (fresh !== undefined) {
    const known = items.some(({ defect }) => defect === fresh.id);
    return known ? `the row of ${nameOf(frame, fresh)} is another now` : `${nameOf(frame, fresh)} is new since`;
  }
  const { flight } = frame.situation;
  if (flight === null || flights.length === 0) return null;
  const sameRoute = flights.filter(({ from, to }) => from === flight.from && to === flight.to);
  if (sameRoute.length === 0) return `${flight.from} to ${flight.to} is another route`;
  const differences = sameRoute.map(({ facts }) => differenceIn(frame, facts));
  return differences.includes(null) ? null : (differences[0] ?? null);
}

export function interacts({ mel }: Pick<Frame, 'mel'>, { entry }: OpenDefect): boolean {
  return entry === null || mel.entry(entry)?.interaction !== 'none';
}

/** A row that is only proposed is tried, not changed: its signature asks again. */
function isAmong(items: GivenOn['items'], { id, row, signed }: OpenDefect): boolean {
  return items.some((item) => item.defect === id && (!signed || item.row === row));
}

function differenceIn(frame: Frame, facts: GivenOn['flights'][number]['facts']): string | null {
  for (const key of Object.keys(facts).sort()) {
    const [was, { value: is }] = [facts[key], frame.facts.view(key)];
    if (is === was) continue;
    const label = readFactKey(key)?.fact.label ?? key;
    if (is instanceof Unknown) return `${label} was ${word(was)}, and now ${is.reason}`;
    return `${label} was ${word(was)}${is instanceof Possible ? '' : ` and is ${word(is)}`}`;
  }
  return null;
}

function nameOf({ mel }: Frame, { id, entry, units }: OpenDefect): string {
  const title = entry === null ? undefined : mel.entry(entry)?.title;
  return title === undefined ? `defect ${id}` : `${title} ${units.join(' or ')}`;
}

function word(value: unknown): string {
  return value === true ? 'yes' : value === false ? 'no' : String(value);
}
