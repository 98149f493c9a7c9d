import { describe, expect, it } from 'vitest';
import { loadMel } from '../load-mel.js';
import { spoilt, validMel } from '../valid-mel.fixture.js';

const errorsOf = (value: unknown) => {
  const loaded = loadMel(value, 'test.yaml');
  return 'errors' in loaded ? loaded.errors : [];
};

describe('the configurations of an entry', () => {
  it('refuses two sub-entries that may be written for the same aircraft', () => {
    const subEntry = validMel().entries[1]?.subEntries[0];
    const both = (left: object | undefined, right: object | undefined) =>
      errorsOf(
        spoilt('/entries/1/subEntries', [
          { ...subEntry, id: 'x', ...left },
          { ...subEntry, id: 'y', ...right },
        ]),
      );
    expect(both({}, {})).toHaveLength(1);
    expect(both({ appliesTo: { configurations: ['P'] } }, {})).toHaveLength(1);
    expect(
      both({ appliesTo: { serials: [{ from: 1, to: 9 }] } }, { appliesTo: { serials: [{ from: 9, to: 12 }] } }),
    ).toHaveLength(1);
    expect(
      both({ appliesTo: { serials: [{ from: 1, to: 9 }] } }, { appliesTo: { serials: [{ from: 10, to: 12 }] } }),
    ).toEqual([]);
    expect(both({ appliesTo: { configurations: ['P'] } }, { appliesTo: { configurations: ['Q'] } })).toEqual([]);
  });
});
