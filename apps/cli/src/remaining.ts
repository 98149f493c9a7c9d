import {
  accountOfUse,
  countUsed,
  whatIsLeft,
  type CountingSettings,
  type ExtensionAnswer,
  type RectificationClock,
  type Used,
  type UseStep,
  type WhatIsLeft,
} from '#intervals';
import { movementsOfOne, type OneAircraft } from './movements-file.js';

/** What is left at an instant; `used`, `steps` and `movements` where something was counted. */
export interface Remaining extends WhatIsLeft {
  used?: Used;
  /** How the use adds up, leg by leg; absent where nothing is counted from use. */
  steps?: UseStep[];
  movements?: Pick<OneAircraft, 'registration' | 'notUsed'> & { legs: number; incomplete: number };
}

/** What was flown by a file of movements, and counters that were given beside it or instead. */
export interface UseGiven {
  flown: OneAircraft | undefined;
  used: Used | undefined;
}

export async function useGiven(movements: string | undefined, used: Used | undefined): Promise<UseGiven> {
  return { flown: movements === undefined ? undefined : await movementsOfOne(movements), used };
}

/** Without `at`, what is left after the last movement. Undefined when nobody asked: no instant and no use. */
export function remainingOf(
  clock: RectificationClock,
  extension: ExtensionAnswer | undefined,
  given: UseGiven,
  { at, settings }: { at: string | undefined; settings: CountingSettings },
): Remaining | undefined {
  const { flown } = given;
  if (at === undefined && flown === undefined && given.used === undefined) return undefined;
  const instant = at ?? lastOf([clock.recordedAt, ...(flown?.legs ?? []).map(endOf)]);
  const used = usedOf(clock, given, { ...settings, at: instant });
  const left = whatIsLeft(clockAt(clock, extension, instant), instant, used, settings);
  if (used === undefined) return left;
  if (!flown) return { ...left, used };
  const { registration, notUsed, legs } = flown;
  const incomplete = legs.filter(({ missing }) => missing.length > 0).length;
  const steps = accountOfUse(clock, legs, { ...settings, at: instant });
  return {
    ...left,
    used,
    ...(steps.length > 0 && { steps }),
    movements: { registration, legs: legs.length, incomplete, notUsed },
  };
}

/** What was used before a flight leaves: by the legs that left before it, and as given. */
export function usedBefore(
  clock: RectificationClock,
  { flown, used }: UseGiven,
  depart: string,
  settings: CountingSettings,
): Used {
  const legs = flown?.legs.filter(({ offBlockAt }) => Date.parse(offBlockAt) < Date.parse(depart));
  return { ...(legs && countUsed(clock, legs, settings)), ...used };
}

/** The clock that counts at an instant: an extension moves its end from the moment it is granted. */
export function clockAt(
  clock: RectificationClock,
  extension: ExtensionAnswer | undefined,
  at: string,
): RectificationClock {
  const granted = extension && 'window' in extension && Date.parse(extension.grantedAt) <= Date.parse(at);
  return granted ? extension.window : clock;
}

function usedOf(
  clock: RectificationClock,
  { flown, used }: UseGiven,
  options: CountingSettings & { at: string },
): Used | undefined {
  if (flown === undefined && used === undefined) return undefined;
  return { ...(flown && countUsed(clock, flown.legs, options)), ...used };
}

const endOf = (leg: OneAircraft['legs'][number]): string =>
  leg.onBlockAt ?? leg.landedAt ?? leg.airborneAt ?? leg.offBlockAt;

const lastOf = (instants: string[]): string =>
  instants.reduce((last, one) => (Date.parse(one) > Date.parse(last) ? one : last));
