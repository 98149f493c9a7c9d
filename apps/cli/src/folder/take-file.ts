/** One file of the watched folder: read whole without following anything, handed in, moved away. */
import { createHash } from 'node:crypto';
import { constants } from 'node:fs';
import { type FileHandle, lstat, open, rename, writeFile } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import type { FileTaken, MovementFile } from '../../../server/src/index.js';
import type { WatchedFolder } from './lay-out.js';

export interface TakingFiles {
  folder: WatchedFolder;
  largestBytes: number;
  take(file: MovementFile): Promise<FileTaken>;
}

/** `gone`: another server took it, or somebody took it back. `unfinished`: it changed while it was read. */
export type Took = 'done' | 'tray' | 'gone' | 'unfinished';

/** @throws Error when it could not be handed in: it stays where it is, and is to be tried again */
export async function takeFile(path: string, { folder, largestBytes, take }: TakingFiles): Promise<Took> {
  const name = basename(path);
  const found = await lstat(path).catch(ifGone);
  if (found === null || found.isDirectory()) return 'gone';
  if (!found.isFile()) return refuse(path, folder, 'It is a link or no plain file, and is not read.');
  const file = await open(path, constants.O_RDONLY | constants.O_NOFOLLOW | constants.O_NONBLOCK).catch(ifGone);
  if (file === null) return 'gone';
  try {
    const before = await file.stat();
    if (!before.isFile()) return await refuse(path, folder, 'It is a link or no plain file, and is not read.');
    if (before.size > largestBytes) {
      return await refuse(path, folder, `It has ${before.size} bytes; ${largestBytes} are taken at once. Divide it.`);
    }
    const bytes = await readWhole(file, before.size);
    const after = await file.stat();
    if (bytes === null || after.size !== before.size || after.mtimeMs !== before.mtimeMs) return 'unfinished';
    const sha256 = createHash('sha256').update(bytes).digest('hex');
    const operator = folder.operators.get(dirname(path)) ?? null;
    const taken = await take({ name, sha256, bytes, operator, receivedAt: before.mtime.toISOString() });
    if (!taken.kept) return await refuse(path, folder, taken.because, sha256);
    await rename(path, join(folder.done, nameKept(name, sha256))).catch(ifGone);
    return 'done';
  } finally {
    await file.close();
  }
}

/** One byte more than it should have: it grew while it was read. */
async function readWhole(file: FileHandle, size: number): Promise<Buffer | null> {
  const buffer = Buffer.alloc(size + 1);
  const { bytesRead } = await file.read(buffer, 0, size + 1, 0);
  return bytesRead === size ? buffer.subarray(0, size) : null;
}

/** The reason is there before the file is, so that no file in the tray is without one. A link is moved, not followed. */
async function refuse(path: string, { tray }: WatchedFolder, because: string, sha256 = ''): Promise<Took> {
  const kept = join(tray, nameKept(basename(path), sha256));
  await writeFile(`${kept}.reason.txt`, `${because}\n`, { flag: 'wx' }).catch(ifThere);
  await rename(path, kept).catch(ifGone);
  return 'tray';
}

/** By its content, so that two files of one name do not meet, and the same one moved twice does. */
function nameKept(name: string, sha256: string): string {
  const plain = name.replaceAll(/[^\p{L}\p{N}._-]/gu, '_').slice(-120);
  return sha256 === '' ? `${Date.now()}-${plain}` : `${sha256.slice(0, 12)}-${plain}`;
}

function ifGone(error: NodeJS.ErrnoException): null {
  if (error.code === 'ENOENT') return null;
  throw error;
}

function ifThere(error: NodeJS.ErrnoException): void {
  if (error.code !== 'EEXIST') throw error;
}
