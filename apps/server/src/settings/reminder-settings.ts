import { everywhere, type Setting } from './setting.js';

export const AT_THE_END = 'at the end';
const SHARES = ['90 %', '75 %', '60 %', '50 %', '40 %', '30 %', '25 %', '20 %', '15 %', '10 %', '5 %', AT_THE_END];

/** When people are reminded of what is left. */
export const REMINDER_SETTINGS: readonly Setting[] = [
  {
    key: 'reminderShares',
    title: 'Reminders',
    about: 'At which shares of what is left of a deferral the people who watch it are reminded.',
    takes: { kind: 'some-of', choices: SHARES.map((value) => ({ value, words: value })) },
    valueIn: everywhere({
      value: ['50 %', '25 %', '10 %', AT_THE_END],
      source: 'common practice, no source: a reminder is our own and changes no deadline',
      mark: 'COMMON PRACTICE',
    }),
  },
];

/** In percent; the end is 0. */
export function percentOf(share: string): number {
  return share === AT_THE_END ? 0 : Number.parseInt(share, 10);
}
