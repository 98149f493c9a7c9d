import { open, type FileHandle } from 'node:fs/promises';
import { UsageError } from './usage-error.js';

export const MOST_BYTES = 20 * 1024 * 1024;
const CHUNK = 64 * 1024;

/** Reads a text file whole, or says in one sentence why it cannot be read. */
export async function readText(path: string): Promise<string> {
  let file: FileHandle | undefined;
  try {
    file = await open(path, 'r');
    return new TextDecoder('utf-8', { fatal: true }).decode(await bytesOf(file));
  } catch (error) {
    throw new UsageError(`${path}: ${reasonOf(error)}`);
  } finally {
    await file?.close();
  }
}

/** Counts while it reads: a device or a pipe does not say how long it is. */
async function bytesOf(file: FileHandle): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  for (let length = 0; ;) {
    const { bytesRead, buffer } = await file.read(new Uint8Array(CHUNK), 0, CHUNK);
    if (bytesRead === 0) return Buffer.concat(chunks);
    chunks.push(buffer.subarray(0, bytesRead));
    length += bytesRead;
    if (length > MOST_BYTES) throw new RangeError(`is longer than ${MOST_BYTES / 1024 / 1024} MB`);
  }
}

const REASONS: Record<string, string> = {
  ENOENT: 'there is no such file',
  ENOTDIR: 'there is no such file',
  EISDIR: 'is a folder, not a file',
  EACCES: 'may not be read by this user',
  ENAMETOOLONG: 'is longer than a file name may be',
  ERR_INVALID_ARG_VALUE: 'is no file name',
  ERR_ENCODING_INVALID_ENCODED_DATA: 'is not UTF-8 text',
};

function reasonOf(error: unknown): string {
  const code = (error as { code?: string }).code;
  return REASONS[code ?? ''] ?? (error instanceof Error ? error.message : String(error));
}
