import {
  countUsed,
  whatIsLeft,
  type CountedUse,
  type CountingSettings,
  type ExtensionAnswer,
  type RectificationClock,
  type WhatIsLeft,
} from '#intervals';
import { movementsOfOne, type OneAircraft } from './movements-file.js';

/** What is left at an instant; `used` and `movements` where a file of movements was given. */
export interface Remaining extends WhatIsLeft {
  used?: CountedUse;
  movements?: Pick<OneAircraft, 'registration' | 'notUsed'> & { legs: number; incomplete: number };
}

interface Asked {
  /** Without it, what is left after the last movement of the file. */
  at: string | undefined;
  /** The file of movements. */
  movements: string | undefined;
  settings: CountingSettings;
}

/** Undefined when neither an instant nor movements were given: then nobody asked. */
export async function remainingOf(
  clock: RectificationClock,
  extension: ExtensionAnswer | undefined,
  { at, movements, settings }: Asked,
): Promise<Remaining | undefined> {
  if (at === undefined && movements === undefined) return undefined;
  const flown = movements === undefined ? undefined : await movementsOfOne(movements);
  const instant = at ?? lastOf([clock.recordedAt, ...(flown?.legs ?? []).map(endOf)]);
  const used = flown && countUsed(clock, flown.legs, { ...settings, at: instant });
  const left = whatIsLeft(clockAt(clock, extension, instant), instant, used, settings);
  if (!flown || !used) return left;
  const { registration, notUsed, legs } = flown;
  const incomplete = legs.filter(({ missing }) => missing.length > 0).length;
  return { ...left, used, movements: { registration, legs: legs.length, incomplete, notUsed } };
}

/** The clock that counts at an instant: an extension moves its end from the moment it is granted. */
function clockAt(clock: RectificationClock, extension: ExtensionAnswer | undefined, at: string): RectificationClock {
  const granted = extension && 'window' in extension && Date.parse(extension.grantedAt) <= Date.parse(at);
  return granted ? extension.window : clock;
}

const endOf = (leg: OneAircraft['legs'][number]): string =>
  leg.onBlockAt ?? leg.landedAt ?? leg.airborneAt ?? leg.offBlockAt;

const lastOf = (instants: string[]): string =>
  instants.reduce((last, one) => (Date.parse(one) > Date.parse(last) ? one : last));
