import { choiceOf, keptSetting } from './kept-settings.js';
import type { Setting } from './setting.js';

const months = (most: number) => ({ kind: 'whole', least: 0, most, unit: 'months' }) as const;

/** Numbers and times that are laid down once. */
export const KEPT_TIMES_SETTINGS: readonly Setting[] = [
  keptSetting({
    key: 'intervalLengths',
    title: 'Interval letters and lengths',
    about: 'How many calendar days each letter gives. A says its own in the row.',
    takes: { kind: 'codes', what: 'letters with their days', example: 'B=3', pattern: /^[BCD]=[1-9]\d{0,2}$/ },
    kept: 'It acts where the MEL is loaded: a row of it may say fewer days than its letter and never more.',
    values: [['B=3', 'C=10', 'D=120'], 'MMEL Policy Letter 25; CS-MMEL; ORO.MLR.105', 'SEEN-Q'],
  }),
  keptSetting({
    key: 'extensionLength',
    title: 'Length of an extension',
    about: 'How long one extension may be.',
    takes: choiceOf(['own-interval', "at most the interval of the operator's own list, from the old deadline"]),
    kept: 'Every extension is held to it in any case.',
    values: {
      easa: ['own-interval', 'ORO.MLR.105(f): at most the interval of the list itself', 'SEEN'],
      faa: ['own-interval', 'FAA Order 8900.1 Vol 4 Ch 4, 4-689B', 'SEEN-Q'],
      every: ['own-interval', 'taken from the other regimes; its own text was not read for this', 'DERIVED'],
    },
  }),
  keptSetting({
    key: 'revisionEffect',
    title: 'A new revision and open items',
    about: 'What a revision of the list does to a deferral that is open.',
    takes: choiceOf(
      ['keeps-what-was-signed', 'it keeps the row as it was signed'],
      ['takes-new-row', 'it takes the new row'],
    ),
    kept: 'An open deferral keeps what was signed in any case; taking the new row is a change of row to be signed.',
    values: {
      faa: ['keeps-what-was-signed', 'AC 120-125 9.2.2.4: it keeps the category it was deferred under', 'SEEN-Q'],
      every: ['keeps-what-was-signed', 'taken from AC 120-125 9.2.2.4; no text of this regime was read', 'DERIVED'],
    },
  }),
  keptSetting({
    key: 'amendmentDays',
    title: 'Amendment time',
    about: 'Within how many days the list is amended after its master list was.',
    takes: { kind: 'whole', least: 1, most: 365, unit: 'days' },
    kept: 'It acts where the list is compared with its master list; the person who does that sees to it.',
    values: [90, 'guidance to ORO.MLR.105(c): 90 days', 'FROM MEMORY'],
  }),
  keptSetting({
    key: 'ageOfFacts',
    title: 'Age of facts',
    about: 'How old the answer of a person may be, where the fact says nothing itself.',
    takes: { kind: 'whole', least: 1, most: 1440, unit: 'minutes' },
    kept: 'Each fact has a validity of its own in the list of facts, and that one counts.',
    values: [720, 'common practice, no source: one duty', 'COMMON PRACTICE'],
  }),
  keptSetting({
    key: 'occurrenceClock',
    title: 'Occurrence report',
    about: 'Within how many hours an occurrence is reported.',
    takes: { kind: 'whole', least: 1, most: 720, unit: 'hours' },
    kept: 'It acts where an occurrence is reported, which is outside this program.',
    values: {
      faa: [96, '14 CFR 121.703: within the 96 hours that it names', 'FROM MEMORY'],
      every: [72, '(EU) 376/2014: 72 hours; taken for this regime where no text of its own was read', 'FROM MEMORY'],
    },
  }),
  keptSetting({
    key: 'partWithoutCertificate',
    title: 'Part without certificate',
    about: 'For how many flight hours a part may be fitted away from base without its own certificate; 0: never.',
    takes: { kind: 'whole', least: 0, most: 100, unit: 'flight hours' },
    kept: 'It acts where work is released with such a part: the release names it.',
    values: {
      easa: [30, '145.A.50(f): at most 30 flight hours', 'FROM MEMORY'],
      every: [0, 'no text was found that allows it: the stricter way', 'DERIVED'],
    },
  }),
  keptSetting({
    key: 'mostOpenItems',
    title: 'Most open items',
    about: 'How many items may be open on one aircraft; 0: no number is set.',
    takes: { kind: 'whole', least: 0, most: 100, unit: 'items' },
    kept: 'It acts on the person who judges the combination: the program counts what is open and refuses nothing for it.',
    values: [0, 'no text gives a number', 'COMMON PRACTICE'],
  }),
  keptSetting({
    key: 'retentionLog',
    title: 'How long the log is kept',
    about: 'For how many months after the last entry.',
    takes: months(600),
    kept: 'The record of this program is never deleted.',
    values: [36, 'M.A.306(c): 36 months after the last entry', 'FROM MEMORY'],
  }),
  keptSetting({
    key: 'retentionWork',
    title: 'How long records of work are kept',
    about: 'For how many months after the release.',
    takes: months(600),
    kept: 'The record of this program is never deleted.',
    values: [36, '145.A.55: three years', 'FROM MEMORY'],
  }),
  keptSetting({
    key: 'nefLimits',
    title: 'Limits of NEF items',
    about: 'What counts as an item without effect on safety, and how long it may wait.',
    takes: { kind: 'text', most: 1200, mayBeNone: true },
    kept: 'It acts where an item is deferred as NEF: the program of the operator is named as its basis, with its limit.',
    values: [null, "the operator's own NEF program", 'COMMON PRACTICE'],
  }),
  keptSetting({
    key: 'defectWord',
    title: 'Word for a defect',
    about: 'What the operator calls it in its own papers.',
    takes: { kind: 'text', most: 40, mayBeNone: false },
    kept: 'Pages say defect; papers of the operator may use its own word.',
    values: ['defect', 'M.A.403 and 14 CFR 121.563 speak of defects and irregularities', 'FROM MEMORY'],
  }),
  keptSetting({
    key: 'listName',
    title: 'Name of the list of open items',
    about: 'What the operator calls it in its own papers.',
    takes: { kind: 'text', most: 60, mayBeNone: false },
    kept: 'Pages say open items; papers of the operator may use its own name.',
    values: ['open items', 'common practice, no source', 'COMMON PRACTICE'],
  }),
];
