/** One detail of an act that a correction may put right: how it is read in the act, and how the act reads with it right. */
import type { Act, ActKind, ActOf, CorrectableDetail, Part } from '../acts.js';

export interface Detail<Acted extends Act = Act> {
  field: CorrectableDetail;
  /** It decides something (which unit is down, what still holds, what stays open): a second person looks and signs. */
  decides?: true;
  /** How many there are of it in this act; none: the act has no such thing. */
  many(act: Acted): number;
  /** What stands there; null when nothing does. */
  read(act: Acted, part: number): string | null;
  write(act: Acted, part: number, now: string): Acted;
}

export type DetailsOf = { [Kind in ActKind]?: readonly Detail<ActOf<Kind>>[] };

type TextKey<Acted> = {
  [Key in keyof Acted]-?: Acted[Key] extends string | undefined ? Key : never;
}[keyof Acted];

/** A text of the act itself. */
export function text<Acted extends Act>(
  field: CorrectableDetail,
  key: TextKey<Acted>,
  decides?: { decides: true },
): Detail<Acted> {
  return {
    field,
    ...decides,
    many: () => 1,
    read: (act) => act[key] as string,
    write: (act, _, now) => ({ ...act, [key]: now }),
  };
}

/** What stands about a part that was fitted or removed. */
export function partDetail<Acted extends Act & { parts: Part[] }>(field: keyof Part): Detail<Acted> {
  return {
    field,
    many: ({ parts }) => parts.length,
    read: ({ parts }, part) => parts[part]?.[field] ?? null,
    write: (act, part, now) => ({
      ...act,
      parts: act.parts.map((one, at) => (at === part ? { ...one, [field]: now } : one)),
    }),
  };
}

export const PART_DETAILS = ['partNumber', 'serialOn', 'serialOff', 'certificate'] as const;
