import type { Sourced } from '#intervals';
import { DEFAULT_RELEASE_WORDING } from '../defects/statements.js';
import { everywhere, type PresetChoice, type Setting } from './setting.js';

const PART_145: Sourced<string> = {
  value: DEFAULT_RELEASE_WORDING,
  source: '145.A.50 and its AMC, wording of the certificate of release to service',
  mark: 'FROM MEMORY',
};
const CANADA: Sourced<string> = {
  value: 'The maintenance described has been performed in accordance with the applicable airworthiness requirements.',
  source: 'Canadian Aviation Regulations 571.10, maintenance release',
  mark: 'FROM MEMORY',
};

const RELEASES: Record<PresetChoice, Sourced<string>> = {
  easa: PART_145,
  faa: {
    value:
      'The work was performed in accordance with the requirements of the manual; all items required to be inspected were inspected by an authorized person who determined that the work was satisfactorily completed; no known condition exists that would make the airplane unairworthy; so far as the work performed is concerned, the aircraft is in condition for safe operation.',
    source: '14 CFR 121.709(b)(2)',
    mark: 'FROM MEMORY',
  },
  'tcca-2006': CANADA,
  'tcca-2022': CANADA,
  custom: PART_145,
};

/** What is signed, and what counts as the original. */
export const RECORD_SETTINGS: readonly Setting[] = [
  {
    key: 'releaseWording',
    title: 'Wording of the release',
    about: 'What the person certifies who releases the aircraft to service.',
    takes: { kind: 'text', most: 1200, mayBeNone: false },
    valueIn: (preset) => RELEASES[preset],
  },
  {
    key: 'legalOriginal',
    title: 'Legal original',
    about: 'Which record is the original; said on every page.',
    takes: {
      kind: 'choice',
      choices: [
        { value: 'paper', words: 'the paper log' },
        { value: 'electronic', words: 'this record' },
      ],
    },
    valueIn: everywhere({
      value: 'paper',
      source: 'until the authority accepts the electronic record (AMC M.A.305; AC 120-78B)',
      mark: 'DERIVED',
    }),
  },
];
