import { createHash } from 'node:crypto';
import { mkdir, rename, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { DataSource } from 'typeorm';
import { headFormat, type HeadFile } from '#record';
import { isoText } from '../rows/column.js';
import type { HeadKey } from './head-key.js';

/**
 * Writes the newest signed head of each operator into the folder, one file for each size, and the public key beside them.
 * A file that is there stays as it is: nothing exported is ever written again.
 */
export async function writeNewestHeads(source: DataSource, folder: string, key: HeadKey): Promise<void> {
  await mkdir(folder, { recursive: true });
  await writeOnce(join(folder, `public-key-${fingerprint(key.publicHex)}.pem`), key.publicPem);
  const operators = await source.query<{ id: string; code: string }[]>('select id, code from recorded_operators()');
  for (const { id, code } of operators) {
    const head = await newestSigned(source, id, code);
    if (head) await writeOnce(join(folder, nameOf(head)), `${JSON.stringify(head, null, 2)}\n`);
  }
}

/** The first 16 hex digits of the key's SHA-256: heads of two keys may lie in one folder. */
export function fingerprint(publicHex: string): string {
  return createHash('sha256').update(publicHex, 'hex').digest('hex').slice(0, 16);
}

/** `QOF-000000000042.json`. A code may hold what a file name may not. */
function nameOf({ operator, size }: HeadFile): string {
  return `${plainCode(operator)}-${String(size).padStart(12, '0')}.json`;
}

export function plainCode(operator: string): string {
  return operator.replace(/[^A-Za-z0-9]/g, '_');
}

function newestSigned(source: DataSource, log: string, operator: string): Promise<HeadFile | null> {
  return source.transaction(async (manager) => {
    await manager.query("select set_config('app.operator', $1, true)", [log]);
    const [row] = await manager.query<{ size: string; root: string; signed_at: Date; signature: string }[]>(
      `select size, root, signed_at, signature from signed_head where operator_id = $1 order by size desc limit 1`,
      [log],
    );
    if (!row) return null;
    const { root, signature } = row;
    const signedAt = isoText(row.signed_at) as string;
    return { format: headFormat, operator, log, size: Number(row.size), root, signedAt, signature };
  });
}

/** Whole or not at all: a file appears under its name only once it is written, and is never written again. */
export async function writeOnce(path: string, content: string): Promise<void> {
  const there = await stat(path).catch(() => null);
  if (there) return;
  const making = `${path}.${process.pid}.making`;
  await writeFile(making, content);
  await rename(making, path);
}
