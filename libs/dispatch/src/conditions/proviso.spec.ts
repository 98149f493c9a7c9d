import { expect, it } from 'vitest';
import type { Row } from '#mel';
import { entry, melOf, situationOf } from '../../../../tests/support/small-mel.js';
import { judge } from '../judge.js';

const mel = (...ids: string[]) => {
  const provisos = ids.map((id) => ({
    id,
    text: `proviso ${id}`,
    when: { fact: 'flight.rvsm', operator: 'equal' as const, value: false },
  }));
  const { subEntries, ...rest } = entry('a', [{}]);
  const rows = subEntries[0]!.rows.map((row): Row => ({ ...row, provisos }));
  return melOf({ ...rest, subEntries: [{ ...subEntries[0]!, rows }] });
};

it('provisos are read out as they are numbered, in whatever order the file has them', async () => {
  const read = async (...ids: string[]) => {
    const { items } = await judge(mel(...ids), situationOf([{ entry: 'a' }]));
    return items[0]!.conditions.flatMap(({ kind, text }) => (kind === 'proviso' ? [text.slice(8)] : []));
  };
  expect(await read('10', '2', '1')).toEqual(['1', '2', '10']);
  expect(await read('aa', 'b', 'a')).toEqual(['a', 'b', 'aa']);
});
