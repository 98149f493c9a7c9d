import { everywhere, type Setting } from './setting.js';

const NO_NUMBER = 'AMC M.A.301 and 14 CFR 121.373 ask for the watching and give no numbers; many operators use these';

/** When a defect that comes back is shown as repetitive. */
export const REPETITIVE_SETTINGS: readonly Setting[] = [
  {
    key: 'repetitiveCount',
    title: 'Repetitive defect: how often',
    about: 'From how many write-ups on, this one counted, a defect is shown as repetitive.',
    takes: { kind: 'whole', least: 2, most: 20, unit: 'write-ups' },
    valueIn: everywhere({ value: 3, source: NO_NUMBER, mark: 'COMMON PRACTICE' }),
  },
  {
    key: 'repetitiveDays',
    title: 'Repetitive defect: within days',
    about: 'Write-ups within so many days count together; 0 sets no such window.',
    takes: { kind: 'whole', least: 0, most: 730, unit: 'days' },
    valueIn: everywhere({ value: 15, source: NO_NUMBER, mark: 'COMMON PRACTICE' }),
  },
  {
    key: 'repetitiveSectors',
    title: 'Repetitive defect: within flights',
    about: 'Write-ups within so many flights count together; 0 sets no such window.',
    takes: { kind: 'whole', least: 0, most: 2000, unit: 'flights' },
    valueIn: everywhere({ value: 15, source: NO_NUMBER, mark: 'COMMON PRACTICE' }),
  },
  {
    key: 'repetitiveHours',
    title: 'Repetitive defect: within flight hours',
    about: 'Write-ups within so many flight hours count together; 0 sets no such window.',
    takes: { kind: 'whole', least: 0, most: 5000, unit: 'flight hours' },
    valueIn: everywhere({ value: 0, source: NO_NUMBER, mark: 'COMMON PRACTICE' }),
  },
  {
    key: 'repetitiveAlikeBy',
    title: 'Repetitive defect: what is alike',
    about: 'By what two write-ups are held to be of the same kind.',
    takes: {
      kind: 'some-of',
      choices: [
        { value: 'entry', words: 'the same MEL entry' },
        { value: 'position', words: 'the same entry at the same position' },
        { value: 'system', words: 'the same system (ATA chapter)' },
        { value: 'message', words: 'the same fault message' },
      ],
    },
    valueIn: everywhere({ value: ['entry', 'position', 'message'], source: NO_NUMBER, mark: 'COMMON PRACTICE' }),
  },
];
