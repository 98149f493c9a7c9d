/** The text of an extension put right: the register of extensions follows, and so does the notice that is still to be sent. */
import type { Act, Corrected } from '#deferrals';
import type { ExtensionRow, Tx } from '#store';
import type { Acted } from '../defects/acting.service.js';
import { sayInstant } from '../deferrals/say-time.js';
import type { Scene } from '../defects/acting.js';

const COLUMNS = ['reason', 'whyNotFixed', 'plan', 'agreement'] as const;

/** What that moves: no limit, since it stands as it was granted; but the authority may have read the first words. */
export async function extensionMoves(
  { tx, life, settings }: Pick<Scene, 'tx' | 'life' | 'settings'>,
  { id }: Act,
): Promise<string> {
  const sentAt = (await rowOf(tx, life.defect, id))?.sentAt ?? null;
  const told =
    sentAt === null
      ? 'The notice will read so.'
      : `The authority was told the first words at ${sayInstant(sentAt, settings.deferral.base)}: tell it what they should read.`;
  return `No limit moves: the extension stands as it was granted. ${told}`;
}

/** In the same transaction as the correction. */
export async function keepExtensionsRight({ scene: { tx }, acts, life }: Acted): Promise<void> {
  for (const act of acts) if (act.kind === 'corrected') await keepRight(tx, life.defect, act);
}

async function keepRight(tx: Tx, defect: string, { act, field, now }: Corrected): Promise<void> {
  const column = COLUMNS.find((one) => one === field);
  const row = column === undefined ? null : await rowOf(tx, defect, act);
  if (row && column !== undefined) await tx.extensions.change(row.id, row.version, { [column]: now });
}

/** The extension that this act granted; null for another act. */
async function rowOf(tx: Tx, defect: string, act: string): Promise<ExtensionRow | null> {
  return (await tx.extensions.ofDefect(defect)).find(({ actId }) => actId === act) ?? null;
}
