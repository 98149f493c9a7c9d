import { describe, expect, it } from 'vitest';
import { PRESET_CHOICES } from './setting.js';
import { settingLines } from './setting-lines.js';
import { SETTINGS } from './settled.js';

/** What an operator settles about its dispatch with open items, in words, and the settings that hold it. */
const SETTLED: readonly [what: string, ...keys: string[]][] = [
  ['the letters of intervals and how long each is', 'intervalLengths'],
  ['whose midnight begins a day', 'timeBase'],
  [
    'from when each kind of clock counts',
    'countsFrom',
    'flightDay',
    'designatedStations',
    'bases',
    'opportunityMinutes',
  ],
  ['which record is day zero for a pair', 'pairDayZero'],
  ['where the MEL stops', 'melStops'],
  ['what a change of row does to a deadline', 'changeOfRow'],
  ['what a return while taxiing counts as', 'rampReturnMakesFlightDay'],
  ['what a take-off given up counts as', 'rejectedTakeOffCounts'],
  ['what a touch-and-go counts as', 'touchAndGoCounts'],
  ['what a diversion counts as', 'diversionCounts'],
  ['what a flight to check the aircraft counts as', 'checkFlightCounts'],
  ['which clock a flight hour is', 'hourClock', 'hoursCountedAt'],
  ['an interval that ends in flight', 'expiryInFlight'],
  ['whether a limit itself is inside', 'equalityAtLimit'],
  ['whether extensions may be granted at all', 'extensionProcedure', 'extensionNeedsAgreement'],
  ['which categories may be extended', 'extensionCategories'],
  ['how often', 'extensionTimes'],
  ['by how much', 'extensionLength'],
  ['by when the authority is told', 'extensionNotice'],
  ['what a revision does to open items', 'revisionEffect'],
  ['how long an amendment may take', 'amendmentDays'],
  ['who defers', 'whoDefers'],
  ['who concurs', 'whoConcurs', 'concurrenceNeeded'],
  ['who does maintenance procedures', 'whoDoesM'],
  ['which rows a crew may defer', 'crewDeferrableRows'],
  ['which work is inspected by a second person, and by whom', 'inspectionList', 'inspectionRule'],
  ['what a release says, and what it is called', 'releaseWording', 'releaseName'],
  ['the word for a defect', 'defectWord'],
  ['the name of the list', 'listName'],
  ['who judges several items together', 'whoJudgesCombinations', 'combinationNeedsAcceptance'],
  [
    'when a defect is repetitive, by number, days and sectors',
    'repetitiveCount',
    'repetitiveDays',
    'repetitiveSectors',
    'repetitiveHours',
    'repetitiveAlikeBy',
  ],
  ['what is late on paper', 'lateAfterMinutes'],
  ['how old a fact may be', 'ageOfFacts'],
  ['ETOPS minutes that are exactly those of the row', 'etopsEquality'],
  ['by when an occurrence is reported', 'occurrenceClock'],
  ['how long a part may fly without its certificate', 'partWithoutCertificate'],
  ['how many items may be open', 'mostOpenItems'],
  ['how long records are kept', 'retentionLog', 'retentionWork'],
  ['signing without a connection', 'offlineSignature'],
  ['what is night', 'nightSource'],
  ['from when a departure is delayed', 'delayThreshold'],
  ['the limits of items without effect on safety', 'nefLimits'],
  ['which record is the original before the law', 'legalOriginal'],
];

/** Beside those: what this program needs to be told to work. */
const OUR_OWN = ['airlineCodes', 'budget', 'eraseLeavers', 'reminderShares'];

describe('the list of what an operator settles', () => {
  it.each(SETTLED)('holds %s', (_, ...keys) => {
    const known = SETTINGS.map(({ key }) => key);
    expect(keys.filter((key) => !known.includes(key))).toEqual([]);
  });

  it('holds nothing that is not named here', () => {
    const named = [...SETTLED.flatMap(([, ...keys]) => keys), ...OUR_OWN];
    expect(SETTINGS.map(({ key }) => key).filter((key) => !named.includes(key))).toEqual([]);
  });

  it.each(PRESET_CHOICES)('gives each a value, its source and its mark under the preset %s', (preset) => {
    for (const line of settingLines({ settings: { preset }, base: 'UTC' })) {
      expect(line.preset.source.length, line.key).toBeGreaterThan(10);
      expect(line.preset.mark, line.key).toMatch(/^[A-Z0-9 -]+$/);
    }
  });

  it('says of one that changes nothing here where it acts', () => {
    const lines = settingLines({ settings: {}, base: 'UTC' });
    const keptOnes = lines.filter(({ kept }) => kept !== null);
    expect(keptOnes.map(({ key }) => key)).toContain('retentionLog');
    expect(lines.find(({ key }) => key === 'hourClock')?.kept).toBe(null);
    for (const { kept } of keptOnes) expect(kept).toMatch(/^[A-Z].{20,}\.$/);
  });

  it('shows airline codes as they were stored by hand', () => {
    const lines = settingLines({ settings: { airlineCodes: { QOF: 'QO' } }, base: 'UTC' });
    expect(lines.find(({ key }) => key === 'airlineCodes')).toMatchObject({ value: ['QOF=QO'], words: 'QOF=QO' });
  });
});
