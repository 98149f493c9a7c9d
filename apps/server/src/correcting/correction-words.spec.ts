import { expect, it } from 'vitest';
import type { RepeatLine } from '../defects/repeats.js';
import { owedWords } from './correction-words.js';

const line = (state: RepeatLine['state'], number: string, departures = 1): RepeatLine => ({
  work: '22-10-01/1/M1',
  text: 'Look.',
  state,
  words: state === 'not-known' ? 'not known' : state,
  because: '',
  flight: { id: number, number, from: 'AAA', offBlockAt: '2026-01-26T12:00Z' },
  departures,
  done: null,
});

it('names what was missed or not known and is so no longer, beside what is owed or missed now', () => {
  const before = [line('not-known', 'F1'), line('missed', 'F2', 2), line('missed', 'F3'), line('due', 'F4')];
  expect(owedWords(before, [line('done', 'F1'), line('missed', 'F3'), line('missed', 'F4')])).toMatch(
    /was missed: "Look\.": missed, flight F4 from AAA\. This stood so before and no longer does: "Look\.": not known, flight F1 from AAA; "Look\.": missed, flight F2 from AAA and 1 more\.$/,
  );
});

it('says nothing of what stays as it was', () => {
  const same = [line('not-known', 'F1'), line('missed', 'F2')];
  expect(owedWords(same, same)).toMatch(/nothing is owed that was not before\.$/);
});
