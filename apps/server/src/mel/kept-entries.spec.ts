import { expect, it } from 'vitest';
import { keptEntries } from './kept-entries.js';

const item = (id: string, entry: string, melRevisionId: string | null, basis: object | null = {}) => ({
  id,
  entry,
  basis,
  melRevisionId,
});

it('an open deferral keeps its entry as the revision had it that it was signed under', () => {
  const open = [item('a', '33-11-01', 'one'), item('b', '33-11-02', 'two'), item('c', '33-11-03', 'one', null)];
  expect([...keptEntries(open, [], 'two')]).toEqual([['33-11-01', 'one']]);
  expect([...keptEntries(open, [], 'one')]).toEqual([['33-11-02', 'two']]);
});

it('what is signed, or tried, under the revision in force brings it for every item of the entry', () => {
  const open = [item('a', '33-11-01', 'one'), item('b', '33-11-01', 'two')];
  expect(keptEntries(open, [], 'two').size).toBe(0);
  expect(keptEntries(open.toReversed(), [], 'two').size).toBe(0);
  expect(keptEntries(open.slice(0, 1), [{ entry: '33-11-01' }], 'two').size).toBe(0);
});
