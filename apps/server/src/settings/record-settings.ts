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

const CERTIFICATE: Sourced<string> = {
  value: 'Certificate of release to service',
  source: '145.A.50(a)',
  mark: 'FROM MEMORY',
};
const MAINTENANCE_RELEASE: Sourced<string> = {
  value: 'Maintenance release',
  source: 'Canadian Aviation Regulations 571.10',
  mark: 'FROM MEMORY',
};

const RELEASE_NAMES: Record<PresetChoice, Sourced<string>> = {
  easa: CERTIFICATE,
  faa: { value: 'Airworthiness release', source: '14 CFR 121.709', mark: 'FROM MEMORY' },
  'tcca-2006': MAINTENANCE_RELEASE,
  'tcca-2022': MAINTENANCE_RELEASE,
  custom: CERTIFICATE,
};

const NEVER_OWN: Sourced<string> = {
  value: 'never',
  source: '14 CFR 121.371(c): nobody inspects their own work; no text of this preset allows it',
  mark: 'DERIVED',
};
const WHEN_UNFORESEEN: Sourced<string> = {
  value: 'when-unforeseen',
  source: 'AMC4 145.A.48: reinspection by the same person only in unforeseen circumstances, recorded',
  mark: 'FROM MEMORY',
};

const OWN_INSPECTION: Record<PresetChoice, Sourced<string>> = {
  easa: WHEN_UNFORESEEN,
  faa: NEVER_OWN,
  'tcca-2006': NEVER_OWN,
  'tcca-2022': NEVER_OWN,
  custom: NEVER_OWN,
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
    key: 'releaseName',
    title: 'Name of the release',
    about: 'What the release is called on pages and on paper.',
    takes: { kind: 'text', most: 80, mayBeNone: false },
    valueIn: (preset) => RELEASE_NAMES[preset],
  },
  {
    key: 'inspectionList',
    title: 'Independent inspection',
    about:
      'Systems (ATA chapter, two digits) and MEL entries whose work a second qualified person inspects. A card may ask for more.',
    takes: { kind: 'codes', what: 'systems and MEL entries', example: '27', pattern: /^\d{2}(-\d{2}-\d{2})?$/ },
    valueIn: everywhere({
      value: null,
      source: '145.A.48 and 14 CFR 121.371(b): the operator lists them; no text gives the list',
      mark: 'DERIVED',
    }),
  },
  {
    key: 'inspectionRule',
    title: 'Rule of the independent inspection',
    about: 'Whether one who did the work may inspect it again when nobody else can, with the reason recorded.',
    takes: {
      kind: 'choice',
      choices: [
        { value: 'never', words: 'never' },
        { value: 'when-unforeseen', words: 'only in an unforeseen case that is recorded' },
      ],
    },
    valueIn: (preset) => OWN_INSPECTION[preset],
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
  {
    key: 'eraseLeavers',
    title: 'Erasing people who left',
    about:
      'Whether the personal data of somebody who left are erased by the program itself, on the day on which nothing of that person has to be kept any longer. It cannot be undone.',
    takes: { kind: 'yes-no' },
    valueIn: everywhere({
      value: false,
      source: 'common practice, no source: a person decides and signs, until the operator settles otherwise',
      mark: 'COMMON PRACTICE',
    }),
  },
];
