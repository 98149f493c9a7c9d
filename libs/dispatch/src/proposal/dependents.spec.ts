/** A row found to hold is looked at again once another row takes down the unit that it needs. */
import { expect, it } from 'vitest';
import { entry, melOf, situationOf } from '../../../../tests/support/small-mel.js';
import { propose } from './propose.js';

const needs = (number: string) =>
  ({ fact: 'entry.up', operator: 'greaterThanInclusive', value: 1, params: { entry: number } }) as const;
const work = (minutes: number) => ({ procedures: [{ id: 'M1', kind: 'M' as const, text: 'Secure it.', minutes }] });

it('does not keep what it found of a row before another took its unit down', async () => {
  const mel = melOf(
    entry('30-01', [{ provisos: [needs('30-03')] }, work(100)]),
    entry('30-02', [{ consideredInoperative: [{ entry: '30-03' }] }, work(200)]),
    entry('30-03', [{}]),
  );
  const defects = ['30-01', '30-02'].map((number, at) => ({
    id: `d${at}`,
    entry: number,
    units: ['1'],
    row: null,
    signed: false,
    recordedAt: '2026-03-09T12:00Z',
  }));
  const { rows, verdict } = await propose(mel, situationOf(defects));
  expect(rows.map(({ row }) => row)).toEqual(['2', '1']);
  expect(verdict.verdict).toBe('after-work');
});
