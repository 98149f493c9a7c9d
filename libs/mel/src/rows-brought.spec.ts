import { expect, it } from 'vitest';
import type { Row } from './content.js';
import { loadMel } from './load-mel.js';
import { rowsBrought } from './rows-brought.js';

const row = (id: string, more: Partial<Row> = {}): Row => ({
  id,
  category: 'C',
  numberInstalled: 1,
  numberRequired: 0,
  remarks: 'Invented.',
  ...more,
});

const entry = (number: string, rows: Row[]) => ({
  number,
  title: `Item ${number}`,
  chapter: '21',
  subEntries: [{ id: 'all', units: ['1'], rows }],
});

const placard = { text: 'INOP', position: 'panel' };

function melOf(...entries: object[]) {
  const head = { format: 'proviso-mel/1', document: 'M', operator: 'none', aircraftType: 'K', revision: '1' };
  const loaded = loadMel({ ...head, effectiveOn: '2026-01-01', entries }, 'test');
  if ('errors' in loaded) throw new Error(JSON.stringify(loaded.errors));
  return loaded.mel;
}

const aircraft = { type: 'K', configuration: [], serial: 1 };

it('follows what is considered inoperative and what a note says is lost, to any depth, and every row of each', () => {
  const first = row('1', { consideredInoperative: [{ entry: '21-2' }] });
  const second = row('1', { notes: [{ text: 'Lost too.', lost: [{ entry: '21-3' }] }] });
  const mel = melOf(
    entry('21-1', [first]),
    entry('21-2', [second, row('2')]),
    entry('21-3', [row('1', { placard })]),
  );
  expect(rowsBrought(mel, first, aircraft).map(({ entry: number, row: id }) => `${number}/${id}`)).toEqual([
    '21-2/1',
    '21-2/2',
    '21-3/1',
  ]);
  expect(rowsBrought(mel, first, aircraft).at(-1)).toMatchObject({ placard, procedures: [] });
});

it('ends on a cycle', () => {
  const first = row('1', { consideredInoperative: [{ entry: '21-2' }] });
  const second = row('1', { consideredInoperative: [{ entry: '21-1' }] });
  const mel = melOf(entry('21-1', [first]), entry('21-2', [second]));
  expect(rowsBrought(mel, first, aircraft)).toHaveLength(2);
});

it('brings nothing where nothing else goes down', () => {
  const only = row('1');
  expect(rowsBrought(melOf(entry('21-1', [only])), only, aircraft)).toEqual([]);
});
