/** What a leg says, apart from which version it is and who said so. */
import { isDeepStrictEqual } from 'node:util';
import type { FlownLeg } from '#movements';
import type { LegRow } from '#store';

const CONTENT = [
  'aircraftId',
  'flight',
  'scheduledOn',
  'sequence',
  'fromStation',
  'toStation',
  'ending',
  'offBlockAt',
  'airborneAt',
  'landedAt',
  'onBlockAt',
  'blockMinutes',
  'flightMinutes',
  'cycles',
  'landings',
  'missing',
  'delays',
  'divertedFrom',
  'divertedReason',
  'flightId',
] as const satisfies readonly (keyof LegRow)[];

export type LegContent = Pick<LegRow, (typeof CONTENT)[number]>;

/** The leg that messages tell, as it is kept. */
export function contentOf(leg: FlownLeg, aircraftId: string): LegContent {
  return {
    aircraftId,
    flight: leg.flight,
    scheduledOn: leg.scheduledOn,
    sequence: leg.sequence,
    fromStation: leg.from,
    toStation: leg.to,
    ending: leg.ending,
    offBlockAt: instantOf(leg.offBlockAt),
    airborneAt: leg.airborneAt === undefined ? null : instantOf(leg.airborneAt),
    landedAt: leg.landedAt === undefined ? null : instantOf(leg.landedAt),
    onBlockAt: leg.onBlockAt === undefined ? null : instantOf(leg.onBlockAt),
    blockMinutes: leg.blockMinutes,
    flightMinutes: leg.flightMinutes,
    cycles: leg.cycles,
    landings: leg.landings,
    missing: [...leg.missing],
    delays: leg.delays.map(({ code, minutes }) => ({ code, minutes })),
    divertedFrom: leg.diverted?.from ?? null,
    divertedReason: leg.diverted?.reason ?? null,
    flightId: null,
  };
}

/** Only the content of a version. */
export function contentIn(row: LegRow): LegContent {
  return Object.fromEntries(CONTENT.map((key) => [key, row[key]])) as LegContent;
}

export function sameContent(one: LegContent, other: LegContent): boolean {
  return CONTENT.every((key) => isDeepStrictEqual(one[key], other[key]));
}

/** The same without anything flown: the leg turned out not to be one. */
export function withdrawn(row: LegRow): LegContent {
  const nothing = { blockMinutes: 0, flightMinutes: 0, cycles: 0, landings: 0 };
  return { ...contentIn(row), ...nothing, ending: 'withdrawn', flightId: null };
}

export function hasFlown({ airborneAt, flightMinutes, cycles }: LegContent): boolean {
  return airborneAt !== null || flightMinutes > 0 || cycles > 0;
}

type Span = Pick<LegContent, 'offBlockAt' | 'onBlockAt'> & Partial<Pick<LegContent, 'landedAt' | 'airborneAt'>>;

/** Whether two of one aircraft lie in the same time. One that ends where the other begins does not. */
export function overlap(one: Span, other: Span): boolean {
  if (one.offBlockAt === other.offBlockAt) return true;
  return one.offBlockAt < endOf(other) && other.offBlockAt < endOf(one);
}

/** The last instant known of it. */
function endOf({ offBlockAt, airborneAt, landedAt, onBlockAt }: Span): string {
  return onBlockAt ?? landedAt ?? airborneAt ?? offBlockAt;
}

function instantOf(text: string): string {
  return new Date(text).toISOString();
}
