/**
 * An answer is the same, byte for byte, in whatever order entries, rows, provisos, defects, facts and the keys of objects
 * are written down, and whatever the time zone and the language of the process.
 */
import { expect, it } from 'vitest';
import { bundled } from '../support/bundled.js';
import { Program } from '../support/program.js';

const MELS = 30;

it('two processes in other zones and languages give the same bytes for what is written in another order', async () => {
  const file = await bundled('tests/cases/verdicts.order.program.ts');
  const run = async (env: Record<string, string>, ...order: number[]): Promise<string[]> => {
    const args = [20261125, MELS, ...order].map(String);
    const program = await new Program(process.execPath, [file, ...args], env).ready();
    await program.finish();
    return program.lines;
  };
  const [[here, ...asDrawn], [there, ...rearranged]] = await Promise.all([
    run({ TZ: 'UTC', LC_ALL: 'en_GB.UTF-8' }),
    run({ TZ: 'Pacific/Chatham', LC_ALL: 'tr_TR.UTF-8' }, 7),
  ]);
  expect([here, there]).toEqual(['en-GB UTC', 'tr-TR Pacific/Chatham']);
  expect(rearranged).toEqual(asDrawn);
  expect(new Set(asDrawn).size).toBeGreaterThan(2 * MELS);
});
