import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll } from 'vitest';

/** A folder for the files that a test hands to the command; it goes when the test file ends. */
export function scratchFolder(): { folder: string; file(name: string, content: string | Uint8Array): string } {
  const folder = mkdtempSync(join(tmpdir(), 'proviso-cli-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return {
    folder,
    file(name, content) {
      const path = join(folder, name);
      writeFileSync(path, content);
      return path;
    },
  };
}
