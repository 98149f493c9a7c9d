/** Acceptance of a combination: it covers what it was given on and every subset of it, and is asked again on any change. */
import { describe, expect, it } from 'vitest';
import { entry, melOf, situationOf } from '../../../../tests/support/small-mel.js';
import { judge } from '../judge.js';
import type { GivenOn, OpenDefect, Situation } from '../situation.js';

const mel = melOf(
  entry('21-01', [{}, {}]),
  entry('22-01', [{}]),
  entry('23-01', [{}]),
  entry('25-01', [{}], ['1'], { interaction: 'none' }),
);
const FACTS = { 'flight.etopsMinutes': 60, 'flight.crew': 'Strinn', 'flight.icing': 'none' };
const on: GivenOn = {
  items: [
    { defect: 'D1', row: '1' },
    { defect: 'D2', row: '1' },
  ],
  flights: [{ from: 'Northmere', to: 'Saltby', facts: FACTS }],
};

async function gate(
  change: Partial<Situation> = {},
  { givenOn = on, more = [], first = {} }: { givenOn?: GivenOn; more?: string[]; first?: Partial<OpenDefect> } = {},
) {
  const defects = [{ entry: '21-01', ...first }, { entry: '22-01' }, ...more.map((one) => ({ entry: one }))];
  const verdict = await judge(
    mel,
    situationOf(defects, {
      facts: Object.fromEntries(Object.entries(FACTS).map(([key, value]) => [key, { value }])),
      judgements: [
        {
          judgement: 'combination',
          accepted: true,
          by: 'Ben Holt',
          role: 'maintenance-control',
          at: '2026-03-10T05:00Z',
          givenOn,
        },
      ],
      ...change,
      settings: { ...situationOf([]).settings, combinationNeedsAcceptance: true },
    }),
  );
  const found = verdict.gates.find((one) => one.gate === 'combination');
  return [found?.now, found?.because ?? ''] as const;
}
const fact = (key: string, value: string | number | null, more = {}) => ({
  facts: {
    ...Object.fromEntries(Object.entries(FACTS).map(([name, known]) => [name, { value: known }])),
    [key]: { value, ...more },
  },
});
const flight = (from: string, to: string) => ({ flight: { ...situationOf([]).flight!, from, to } });

describe('an acceptance of the combination', () => {
  it('holds for what it was given on', async () => {
    expect((await gate())[0]).toBe('T');
  });

  it('holds for fewer items, and whatever entries without interaction are open', async () => {
    const three = { ...on, items: [...on.items, { defect: 'D3', row: '1' }] };
    expect((await gate({}, { givenOn: three }))[0]).toBe('T');
    expect((await gate({}, { more: ['25-01'] }))[0]).toBe('T');
  });

  it('given for any flight it holds on every route', async () => {
    expect((await gate(flight('Saltby', 'Northmere'), { givenOn: { ...on, flights: [] } }))[0]).toBe('T');
  });

  it('does not turn on a fact that was not known when it was given', async () => {
    const without = { ...on, flights: [{ ...on.flights[0]!, facts: { 'flight.icing': 'none' } }] };
    expect((await gate(fact('flight.crew', 'Pallowen'), { givenOn: without }))[0]).toBe('T');
  });

  it('holds where one of several flights of the route reads the same', async () => {
    const other = { ...on.flights[0]!, facts: { ...FACTS, 'flight.crew': 'Pallowen' } };
    const two = { ...on, flights: [...on.flights, other] };
    expect((await gate(fact('flight.crew', 'Pallowen'), { givenOn: two }))[0]).toBe('T');
  });

  it.each([
    ['a new item', {}, { more: ['23-01'] }, 'Item 23-01 1 is new since'],
    ['a changed row', {}, { first: { row: '2' } }, 'the row of Item 21-01 1 is another now'],
    ['a changed route', flight('Northmere', 'Fenwick'), {}, 'Northmere to Fenwick is another route'],
    ['changed ETOPS minutes', fact('flight.etopsMinutes', 120), {}, 'was 60 and is 120'],
    ['a changed crew', fact('flight.crew', 'Pallowen'), {}, 'crew was Strinn and is Pallowen'],
    ['a changed fact of a row', fact('flight.icing', 'forecast'), {}, 'was none and is forecast'],
    ['an expired fact', fact('flight.icing', 'none', { validUntil: '2026-03-10T07:00Z' }), {}, 'it was valid until'],
    ['a fact that is not known any more', fact('flight.crew', null), {}, 'was Strinn, and now asked for'],
  ])('is asked again on %s, and says so', async (_what, change, more, because) => {
    const [now, said] = await gate(change, more);
    expect(now).toBe('U');
    expect(said).toContain('Ben Holt accepted it');
    expect(said).toContain(because);
    expect(said).toContain('ask maintenance-control');
  });
});
