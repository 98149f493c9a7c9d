import { conditionSaid, itemName, sentence, withoutStop } from '../answer/words.js';
import type { NowAfter } from '../verdict.js';
import type { Leg } from './fly-plan.js';
import type { Changed } from './next-flights.js';

interface Said extends NowAfter {
  about: string | null;
  says: string;
  because: string;
}

/** The conditions that two flights, one after the other, answer differently, as things are or after work. */
export function changedSince(before: Leg | undefined, now: Leg): Changed[] {
  if (before === undefined) return [];
  const [were, are] = [saidBy(before), saidBy(now)];
  const ids = [...new Set([...are.keys(), ...were.keys()])];
  return ids.flatMap((id): Changed[] => {
    const [was, is] = [were.get(id), are.get(id)];
    if (was?.now === is?.now && was?.after === is?.after) return [];
    return [
      {
        id,
        about: (is ?? was)?.about ?? null,
        was: pairOf(was),
        is: pairOf(is),
        because: is?.because ?? 'it is no longer asked for',
        says: is?.says ?? `${withoutStop(was?.says ?? '')}: no longer asked for.`,
      },
    ];
  });
}

function pairOf(said: Said | undefined): NowAfter | null {
  return said === undefined ? null : { now: said.now, after: said.after };
}

function saidBy({ judged, gates }: Leg): Map<string, Said> {
  const items = judged?.groups.flatMap((group) => group.items) ?? [];
  const conditions = items.flatMap((one) =>
    one.answer.conditions.map((condition): [string, Said] => {
      const { id, now, after, because } = condition;
      const said = { now, after, because, about: itemName(one), says: sentence(conditionSaid(condition)) };
      return [`${id} ${one.item.defect?.id ?? one.item.unit}`, said];
    }),
  );
  const ofGates = gates.map(({ answer: { gate, now, after, because } }): [string, Said] => {
    return [gate, { now, after, because, about: null, says: sentence(because) }];
  });
  return new Map([...ofGates, ...conditions]);
}
