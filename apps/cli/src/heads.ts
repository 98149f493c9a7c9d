import { join } from 'node:path';
import type { HeadExport, HeadKey } from '#store';
import { DATA_FOLDER } from './database.js';
import type { Given, Option } from './options.js';
import { UsageError } from './usage-error.js';

export const HEAD_OPTIONS: readonly Option[] = [
  { name: 'heads', value: 'FOLDER', about: 'sign the heads of the record and write them there (HEADS_FOLDER)' },
  { name: 'heads-every', value: 'MINUTES', about: 'how often, 1 to 1440; 10 when absent (HEADS_EVERY)' },
  { name: 'head-key', value: 'FILE', about: 'the private key they are signed with, made when missing (HEAD_KEY)' },
];

const EVERY_MINUTES = 10;
const MINUTE_MS = 60_000;

/** How the heads of the record leave the house. */
export interface HeadsAsked {
  /** Null signs none. */
  folder: string | null;
  key: string;
  minutes: number;
}

/** `--heads`, `--heads-every` and `--head-key`, or HEADS_FOLDER, HEADS_EVERY and HEAD_KEY. */
export function headsAsked({ options }: Given): HeadsAsked {
  const minutes = Number(options.get('heads-every') ?? process.env['HEADS_EVERY'] ?? EVERY_MINUTES);
  if (!Number.isInteger(minutes) || minutes < 1 || minutes > 1440) {
    throw new UsageError(
      `--heads-every ${options.get('heads-every') ?? minutes} is no number of minutes from 1 to 1440`,
    );
  }
  return {
    folder: options.get('heads') ?? process.env['HEADS_FOLDER'] ?? null,
    key: options.get('head-key') ?? process.env['HEAD_KEY'] ?? join(DATA_FOLDER, 'head-key.pem'),
    minutes,
  };
}

/** Begins to sign and export heads; null where no folder is named. */
export async function exportHeads(
  ownerUrl: string,
  { folder, key, minutes }: HeadsAsked,
  now: () => string,
  onError: (error: unknown) => void,
): Promise<HeadExport | null> {
  if (folder === null) return null;
  const { startHeadExport } = await import('#store');
  return startHeadExport(ownerUrl, { key: await keyAsked(key), folder, everyMs: minutes * MINUTE_MS, now, onError });
}

/** The key that signs them, made the first time. */
export async function keyAsked(path: string): Promise<HeadKey> {
  const { headKeyIn } = await import('#store');
  try {
    return headKeyIn(path);
  } catch (error) {
    throw new UsageError(`--head-key: ${error instanceof Error ? error.message : String(error)}`);
  }
}
