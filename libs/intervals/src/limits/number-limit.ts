import { sayMinutes } from '../explain-time.js';
import type { Limit } from '../interval-text.js';
import type { LimitAnswer } from '../limit-answer.js';
import type { CountingSettings } from '../settings.js';

/**
 * Flights and cycles: those used and those of this flight together may reach the limit, not pass it.
 *
 * 4 flights, 3 used -> this is flight 4 of 4, holds; 4 used -> this would be flight 5, fails.
 */
export function askNumber(limit: Limit, used: number | undefined, more: number): LimitAnswer {
  if (used !== undefined && used >= limit.amount) {
    return { limit, answer: 'fails', because: `${used} of ${limit.amount} ${limit.unit} are used up.` };
  }
  if (used === undefined) {
    return {
      limit,
      answer: 'unknown',
      because: `How many of the ${limit.amount} ${limit.unit} are used is not known.`,
    };
  }
  const total = used + more;
  const sum = `${used} ${limit.unit} used and ${more} with this flight make ${total}; the limit is ${limit.amount}`;
  return { limit, answer: total <= limit.amount ? 'holds' : 'fails', because: `${sum}.` };
}

/**
 * Flight hours and engine hours: under `arrival` the planned flight's own time must fit into what is left, to the minute;
 * under `departure` something must be left when it leaves. Whether the limit itself is inside, the operator settles.
 *
 * 6 hours, 3 h 18 min used, 2 h 54 min planned -> 6 h 12 min, fails at arrival.
 */
export function askHours(
  limit: Limit,
  usedMinutes: number | undefined,
  plannedMinutes: number | undefined,
  { hoursCountedAt, equalityAtLimit }: Pick<CountingSettings, 'hoursCountedAt' | 'equalityAtLimit'>,
): LimitAnswer {
  const limitMinutes = limit.amount * 60;
  const say = (because: string, answer: LimitAnswer['answer']): LimitAnswer => ({ limit, answer, because });
  if (usedMinutes === undefined)
    return say(`How many of the ${limit.amount} ${limit.unit.replace('-', ' ')} are used is not known.`, 'unknown');
  const used = `${sayMinutes(usedMinutes)} of ${sayMinutes(limitMinutes)} used`;
  if (usedMinutes >= limitMinutes) return say(`${used}: nothing is left.`, 'fails');
  if (hoursCountedAt === 'departure') return say(`${used}: the flight leaves before the hours are over.`, 'holds');
  if (plannedMinutes === undefined) return say(`${used}, but how long this flight takes is not known.`, 'unknown');
  const total = usedMinutes + plannedMinutes;
  const sum = `${used}, with the planned ${sayMinutes(plannedMinutes)} it is ${sayMinutes(total)} at arrival`;
  if (total === limitMinutes && equalityAtLimit === 'outside')
    return say(`${sum}: at the limit itself, which is outside.`, 'fails');
  return total <= limitMinutes ? say(`${sum}: inside.`, 'holds') : say(`${sum}: over the limit.`, 'fails');
}
