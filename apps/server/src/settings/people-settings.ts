import { choiceOf, keptSetting, rolesOf } from './kept-settings.js';
import type { Setting } from './setting.js';

const BY_AUTHORISATION = 'It acts through the authorisations of each person, which name what may be done.';
const NO_TEXT = 'common practice, no source: the operator names them in its procedures';

/** Who does what. */
export const PEOPLE_SETTINGS: readonly Setting[] = [
  keptSetting({
    key: 'whoDefers',
    title: 'Who defers',
    about: 'Who may sign a deferral.',
    takes: rolesOf('technician', 'maintenance-control', 'engineer', 'commander'),
    kept: BY_AUTHORISATION,
    values: [['technician', 'maintenance-control'], NO_TEXT, 'COMMON PRACTICE'],
  }),
  keptSetting({
    key: 'whoConcurs',
    title: 'Who concurs',
    about: 'Who may concur to a deferral, where a second person must.',
    takes: rolesOf('maintenance-control', 'engineer', 'quality'),
    kept: BY_AUTHORISATION,
    values: [['maintenance-control'], NO_TEXT, 'COMMON PRACTICE'],
  }),
  keptSetting({
    key: 'whoDoesM',
    title: 'Who does (M) procedures',
    about: 'Who may do and sign a maintenance procedure of a row.',
    takes: rolesOf('technician', 'engineer', 'commander'),
    kept: 'It acts where a row names who does a procedure; where it names nobody, a technician does.',
    values: [
      ['technician'],
      'CS-MMEL: (M) is done by maintenance, unless others are trained and authorised',
      'FROM MEMORY',
    ],
  }),
  keptSetting({
    key: 'crewDeferrableRows',
    title: 'Rows that the crew may defer',
    about: 'Which rows the commander may defer without a technician.',
    takes: { kind: 'text', most: 1200, mayBeNone: true },
    kept: BY_AUTHORISATION,
    values: [null, 'none until the operator names them: the stricter way', 'DERIVED'],
  }),
  keptSetting({
    key: 'whoJudgesCombinations',
    title: 'Who judges combinations',
    about: 'Who accepts several items that are open at once.',
    takes: rolesOf('maintenance-control', 'engineer', 'commander'),
    kept: 'It acts where a judgement is asked: the question about the combination names who may answer it.',
    values: [
      ['maintenance-control'],
      'the interaction of several items is considered; by whom no text says',
      'DERIVED',
    ],
  }),
  keptSetting({
    key: 'inspectionList',
    title: 'Tasks with an independent inspection',
    about: 'Which work a second person must inspect.',
    takes: { kind: 'text', most: 1200, mayBeNone: true },
    kept: 'It acts where work is signed: who did it says whether it needs an inspection.',
    values: {
      faa: [null, '14 CFR 121.369(b)(2): the required inspection items of the manual', 'FROM MEMORY'],
      every: [null, '145.A.48: critical maintenance tasks, as the operator names them', 'FROM MEMORY'],
    },
  }),
  keptSetting({
    key: 'inspectionRule',
    title: 'Rule of the independent inspection',
    about: 'Whether the person who did the work may ever inspect it.',
    takes: choiceOf(
      ['never-the-performer', 'never'],
      ['performer-if-unforeseen', 'only where nobody else could be foreseen, and recorded'],
    ),
    kept: 'The program never takes an inspection from a person who did the work, whichever is chosen.',
    values: {
      easa: [
        'performer-if-unforeseen',
        '145.A.48: reinspection by the same person in unforeseen circumstances',
        'FROM MEMORY',
      ],
      faa: ['never-the-performer', '14 CFR 121.371(c)', 'FROM MEMORY'],
      every: ['never-the-performer', 'no text was read for this regime: the stricter way', 'DERIVED'],
    },
  }),
  keptSetting({
    key: 'offlineSignature',
    title: 'Signature without connection',
    about: 'Whether something may be signed on a device that cannot reach the server.',
    takes: { kind: 'yes-no' },
    kept: 'No page signs without the server; what is signed meanwhile is signed on paper and entered.',
    values: [false, 'off until the authority accepted a procedure for it', 'DERIVED'],
  }),
];
