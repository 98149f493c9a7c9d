/** A share of what is left that was reached, in percent; 0 is the end. */
export interface RemindersDue {
  /** The smallest share reached, of which somebody is told now; null when that was noticed before. */
  tell: number | null;
  /** Larger shares reached and not noticed before. Telling of them too would say the same thing twice. */
  passOver: number[];
}

/**
 * Which shares are reached and not yet noticed. A share is reached when that much or less is left.
 *
 * 60 % left, asked at 50, 25, 10, 0: nothing. 24 % left and nothing noticed: told of 25, 50 passed over.
 * @param left from 1 down to 0, see `shareLeft`
 * @param asked percent, in any order
 * @param noticed those that were told or passed over before
 */
export function remindersDue(
  left: number,
  asked: readonly number[],
  noticed: ReadonlySet<number> = new Set(),
): RemindersDue {
  const reached = [...new Set(asked)].filter((share) => left * 100 <= share).sort((one, other) => one - other);
  const [smallest, ...larger] = reached;
  if (smallest === undefined) return { tell: null, passOver: [] };
  return {
    tell: noticed.has(smallest) ? null : smallest,
    passOver: larger.filter((share) => !noticed.has(share)),
  };
}
