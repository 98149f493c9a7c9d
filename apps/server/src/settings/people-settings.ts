import { keptSetting, rolesOf } from './kept-settings.js';
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
    key: 'offlineSignature',
    title: 'Signature without connection',
    about: 'Whether something may be signed on a device that cannot reach the server.',
    takes: { kind: 'yes-no' },
    kept: 'No page signs without the server; what is signed meanwhile is signed on paper and entered.',
    values: [false, 'off until the authority accepted a procedure for it', 'DERIVED'],
  }),
];
