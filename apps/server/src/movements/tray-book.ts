/**
 * Keeps the tray equal to what waits.
 *
 * What waits about messages in use follows from all of them together, so it is compared whole: a new reason opens an
 * entry, one that is gone settles it. A person who has looked at a reason and left the message as it is is not asked again.
 */
import type { MovementMessageRow, MovementTrayRow, Tx } from '#store';
import type { Waiting } from './gather.js';

export interface TrayChanged {
  opened: MovementTrayRow[];
  settled: MovementTrayRow[];
}

/** @param messages in use, with all that waits about them */
export async function keepTray(
  tx: Tx,
  messages: readonly MovementMessageRow[],
  waiting: readonly Waiting[],
  now: string,
): Promise<TrayChanged> {
  const kept = await tx.movements.trayOf(messages.map(({ id }) => id));
  const asked = new Set(kept.filter(({ state }) => state !== 'settled').map(keyOf));
  const wanted = new Map(waiting.map((one) => [keyOf(one), one]));
  const fresh = [...wanted].filter(([key]) => !asked.has(key)).map(([, one]) => ({ ...one, openedAt: now }));
  const opened = await tx.movements.openTray(fresh);
  const over = kept.filter((entry) => entry.state === 'open' && !wanted.has(keyOf(entry)));
  for (const { id, version } of over) await tx.movements.changeTray(id, version, { state: 'settled', closedAt: now });
  return { opened, settled: over.map((entry) => ({ ...entry, state: 'settled', closedAt: now })) };
}

export function keyOf({ messageId, reason, sentence }: Waiting | MovementTrayRow): string {
  return JSON.stringify([messageId, reason, sentence]);
}
