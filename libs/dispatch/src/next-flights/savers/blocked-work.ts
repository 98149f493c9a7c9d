import type { Procedure } from '#mel';
import type { Leg } from '../fly-plan.js';

/** Work that the broken flight owes and that is not known to be possible there. */
export interface BlockedWork {
  work: string;
  defect?: string;
  minutes: number | null;
  text: string;
  /** Only after the first flight is it owed, so that doing it before counts for nothing. */
  afterFirstFlight: boolean;
}

export function blockedWork({ judged }: Leg): BlockedWork[] {
  const items = judged?.groups.flatMap((group) => group.items) ?? [];
  return items.flatMap(({ item, answer }) =>
    answer.conditions
      .filter(({ kind, after }) => (kind === 'procedure' || kind === 'placard') && after !== 'T')
      .map(({ id, text }): BlockedWork => {
        const procedure = item.row?.procedures?.find((one) => id.endsWith(`/${one.id}`));
        return {
          work: id,
          text,
          ...(item.defect === null ? {} : { defect: item.defect.id }),
          minutes: procedure === undefined ? 0 : (procedure.minutes ?? null),
          afterFirstFlight: waitsForFlight(procedure),
        };
      }),
  );
}

function waitsForFlight(procedure: Procedure | undefined): boolean {
  const repeat = procedure?.repeat;
  return typeof repeat === 'object' && 'afterFirstFlightThenEvery' in repeat;
}

export function minutesOfBlocked(blocked: readonly BlockedWork[]): number | null {
  return blocked.reduce<number | null>(
    (sum, { minutes }) => (sum === null || minutes === null ? null : sum + minutes),
    0,
  );
}

/** The beginning of each text: the whole of it stands in the row. */
export function sayWork(blocked: readonly BlockedWork[]): string {
  return blocked.map(({ text }) => text.split('. ')[0]?.replace(/\.$/, '') ?? text).join('; ');
}
