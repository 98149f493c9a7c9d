import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Store } from '#store';
import type { DemoLoaded } from '../../../seed/load.js';

/** The checkout: this file runs from dist/apps/cli/src. */
export const ROOT = fileURLToPath(new URL('../../../../', import.meta.url));

const FOLDER = join(ROOT, 'seed');

/**
 * Loads the demo when the database holds no operator. Of several servers that start at once one loads it.
 * @returns the demo sign-ins when the database holds the demo, null when it holds other operators
 */
export async function demoOnEmpty(ownerUrl: string, store: Store, tzdb: string): Promise<DemoLoaded | null> {
  const { listOperators, oneAtATime } = await import('#store');
  const { demoOf, loadDemo } = await import('../../../seed/load.js');
  return oneAtATime(ownerUrl, 'operators', async () => {
    const operators = await listOperators(ownerUrl);
    if (operators.some(({ invented }) => invented)) return demoOf(FOLDER);
    if (operators.length > 0) return null;
    const now = new Date().toISOString();
    return loadDemo({ folder: FOLDER, ownerUrl, store, now, tzdb });
  });
}
