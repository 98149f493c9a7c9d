import { createPublicKey } from 'node:crypto';
import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { HeadKey } from '#store';
import { erasedWords, newestOfEach } from './erasures.js';
import { jsonIn } from './signed-file.js';

/**
 * Holds a database against the lists of erasures in the folder of its signed heads before it is served: it may have been
 * restored without them. A list that is refused stops nobody from working; it is told by name.
 * @returns what to say; nothing where nobody had to be erased again
 */
export async function erasuresAtStart(
  ownerUrl: string,
  folder: string,
  key: HeadKey,
  now: string,
): Promise<string[]> {
  const { eraseAgain } = await import('#store');
  const names = newestOfEach(await readdir(folder).catch(() => []));
  const keys = [createPublicKey(key.publicPem)];
  const lines: string[] = [];
  for (const name of names) {
    try {
      const content = await jsonIn(join(folder, name));
      const held = await eraseAgain(ownerUrl, [{ name, content }], { keys, now });
      lines.push(...held.filter(({ erased }) => erased > 0).map(erasedWords));
    } catch (error) {
      lines.push(
        `List of erasures refused: ${error instanceof Error ? error.message : String(error)}; nobody was erased by it.`,
      );
    }
  }
  return lines;
}
