/**
 * A backup is one compressed file of lines of JSON: what it is, then each table's rows, then how many of each there were
 * and the hash over everything before. A file that was cut off or altered anywhere has no end that fits.
 */
import { createHash, type Hash } from 'node:crypto';
import { once } from 'node:events';
import { createReadStream, createWriteStream } from 'node:fs';
import { createInterface } from 'node:readline';
import { createGunzip, createGzip } from 'node:zlib';
import { pipeline } from 'node:stream/promises';
import { PassThrough } from 'node:stream';
import type { Counter } from './tables-of-backup.js';

export const backupFormat = 'proviso-backup/1';

export interface BackupHead {
  format: typeof backupFormat;
  madeAt: string;
  /** Names of the migrations that made the schema, in order. */
  migrations: string[];
  operators: { id: string; code: string }[];
  counters: Counter[];
}

/** Rows that follow, of one table and, where it has one, one operator. Each is a line with the row as PostgreSQL writes it. */
export interface BackupPart {
  table: string;
  operator: string | null;
}

export interface BackupEnd {
  rows: number;
  /** Over every line before this one, line ends included. */
  sha256: string;
}

export type BackupLine = { head: BackupHead } | { part: BackupPart } | { row: string } | { end: BackupEnd };

export class BackupDamaged extends Error {
  override readonly name = 'BackupDamaged';
}

/** Writes lines, hashing them on the way. */
export class BackupWriter {
  private readonly hash: Hash = createHash('sha256');
  private readonly lines = new PassThrough();
  private readonly written: Promise<void>;
  private rows = 0;

  constructor(path: string) {
    this.written = pipeline(this.lines, createGzip(), createWriteStream(path, { mode: 0o600, flags: 'wx' }));
    this.written.catch(() => undefined);
  }

  async put(line: BackupLine): Promise<void> {
    const text = `${JSON.stringify(line)}\n`;
    this.hash.update(text);
    if ('row' in line) this.rows += 1;
    if (!this.lines.write(text)) await Promise.race([once(this.lines, 'drain'), this.written]);
  }

  async end(): Promise<BackupEnd> {
    const end = { rows: this.rows, sha256: this.hash.digest('hex') };
    this.lines.end(`${JSON.stringify({ end })}\n`);
    await this.written;
    return end;
  }

  async abandon(): Promise<void> {
    this.lines.destroy();
    await this.written.catch(() => undefined);
  }
}

/**
 * The lines of a backup but its end, which is checked.
 * @throws BackupDamaged when the file is none, or is not whole
 */
export async function* backupLines(path: string): AsyncGenerator<BackupLine> {
  const hash = createHash('sha256');
  let rows = 0;
  let end: BackupEnd | null = null;
  try {
    const unpacked = new PassThrough();
    const unpacking = pipeline(createReadStream(path), createGunzip(), unpacked);
    unpacking.catch((error: Error) => unpacked.destroy(error));
    const lines = createInterface({ input: unpacked, crlfDelay: Number.POSITIVE_INFINITY });
    // Told by the unpacking as well; a reader that has stopped already would leave it to nobody.
    lines.on('error', () => undefined);
    for await (const text of lines) {
      if (end !== null) throw new BackupDamaged('something stands after its end');
      const line = JSON.parse(text) as BackupLine;
      if ('end' in line) {
        ({ end } = line);
        continue;
      }
      hash.update(`${text}\n`);
      if ('row' in line) rows += 1;
      yield line;
    }
    await unpacking;
  } catch (error) {
    throw damageOf(error);
  }
  if (end === null) throw new BackupDamaged('it ends too early');
  if (end.rows !== rows || end.sha256 !== hash.digest('hex')) throw new BackupDamaged('it was altered');
}

/** What the unpacking or the parser says of bytes that are not ours. */
function damageOf(error: unknown): unknown {
  const { code } = error as NodeJS.ErrnoException;
  if (error instanceof SyntaxError) return new BackupDamaged('it was altered');
  if (code?.startsWith('Z_'))
    return new BackupDamaged(code === 'Z_BUF_ERROR' ? 'it ends too early' : 'it was altered');
  return error;
}

/** The head, once every line of the file was read and fits. */
export async function checkedHead(path: string): Promise<BackupHead> {
  let head: BackupHead | null = null;
  for await (const line of backupLines(path)) if ('head' in line) head ??= line.head;
  if (head?.format !== backupFormat) throw new BackupDamaged(`it is not of the format ${backupFormat}`);
  return head;
}
