import type { Leg } from './fly-plan.js';
import type { RepeatOwed } from './next-flights.js';

/** Work that a row owes again and again, and that is owed before this flight: where, from when until when, and whether. */
export function repeatsOwed({ judged, frame, flight }: Leg, groundMinutes: number): RepeatOwed[] {
  const items = judged?.groups.flatMap((group) => group.items) ?? [];
  return items.flatMap(({ item, answer }) =>
    (item.row?.procedures ?? []).flatMap((procedure): RepeatOwed[] => {
      const { repeat = 'once', minutes = null } = procedure;
      const work = `${answer.entry}/${answer.row ?? ''}/${procedure.id}`;
      const condition = answer.conditions.find(({ id }) => id === work);
      if (repeat === 'once' || condition === undefined || condition.now === 'T') return [];
      return [
        {
          work,
          text: procedure.text,
          defect: item.defect?.id ?? null,
          because: condition.because,
          station: flight.from,
          from: frame.situation.at,
          until: flight.offBlockAt,
          minutes,
          fits: minutes === null ? null : minutes <= groundMinutes,
          possible: condition.after,
        },
      ];
    }),
  );
}
