import { expect, it } from 'vitest';
import { zoneDataWords } from './zone-data-words.js';

const looked = { operator: 'QA', tzdb: '2026a', newer: null, counted: 4, differences: 0 };

it('tells what newer zone data moved, and where this server is behind, and nothing else', () => {
  expect(zoneDataWords([looked])).toEqual([]);
  expect(
    zoneDataWords([
      { ...looked, differences: 1 },
      { ...looked, operator: 'QB', newer: '2026f' },
    ]),
  ).toEqual([
    'QA: by time-zone data 2026a 1 of 4 open deadlines end at another instant; the stricter end counts until a person confirms (page /zone-data).',
    'QB: deadlines are stored with time-zone data 2026f, newer than 2026a; this server computes none.',
  ]);
});
