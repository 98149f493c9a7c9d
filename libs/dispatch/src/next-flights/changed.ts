import type { Truth } from '../verdict.js';
import type { Leg } from './fly-plan.js';
import type { Changed } from './next-flights.js';

interface Said {
  truth: Truth;
  because: string;
}

/** The conditions that two flights, one after the other, answer differently. */
export function changedSince(before: Leg | undefined, now: Leg): Changed[] {
  if (before === undefined) return [];
  const [were, are] = [saidBy(before), saidBy(now)];
  const ids = [...new Set([...are.keys(), ...were.keys()])];
  return ids.flatMap((id): Changed[] => {
    const [was, is] = [were.get(id), are.get(id)];
    if (was?.truth === is?.truth) return [];
    return [
      {
        id,
        was: was?.truth ?? null,
        is: is?.truth ?? null,
        because: is?.because ?? 'it is no longer asked for',
      },
    ];
  });
}

function saidBy({ judged, gates }: Leg): Map<string, Said> {
  const items = judged?.groups.flatMap((group) => group.items) ?? [];
  const conditions = items.flatMap(({ item, answer }) =>
    answer.conditions.map(
      ({ id, now, because }) => [`${id} ${item.defect?.id ?? item.unit}`, { truth: now, because }] as const,
    ),
  );
  const ofGates = gates.map(({ answer }) => [answer.gate, { truth: answer.now, because: answer.because }] as const);
  return new Map<string, Said>([...ofGates, ...conditions]);
}
