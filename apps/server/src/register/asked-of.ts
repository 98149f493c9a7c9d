import { type CorrectionAsked, Refusal, type RegisterLife, type ThingCorrectionAsked } from '#deferrals';
import type { OpenedDefect } from '../defects/defect-book.js';

/** The register of an aircraft, and the open items that own some of what is left on it. */
export interface LivesOfAircraft {
  life: RegisterLife;
  opened: readonly OpenedDefect[];
}

/** The correction that waits, wherever it does. Throws Refusal `correction-not-asked`. */
export function askedOf({ life, opened }: LivesOfAircraft, asked: string): CorrectionAsked | ThingCorrectionAsked {
  const all = [...life.asked, ...opened.flatMap((one) => one.life.asked)];
  const found = all.find(({ id, item }) => id === asked && item !== null);
  if (found === undefined) throw new Refusal('correction-not-asked', { asked });
  return found;
}
