/** What an operator settled, as the rules take it. */
import { DEFAULT_SETTINGS, type DeferralSettings, type RepetitiveRule } from '#deferrals';
import type { JudgeSettings } from '#dispatch';
import { type CountingSettings, countingSettings, type Preset, type Sourced } from '#intervals';
import type { OperatorRow } from '#store';
import { noticeNamed, presetNamed, timesNamed } from '../settings/preset-of-choice.js';
import { percentOf } from '../settings/reminder-settings.js';
import type { SettingValue } from '../settings/setting.js';
import { presetChosen, type Settled, settledBy } from '../settings/settled.js';

export interface OperatorSettings {
  deferral: DeferralSettings & { counting: CountingSettings };
  judge: JudgeSettings;
  releaseWording: string;
  releaseName: string;
  repetitive: RepetitiveRule;
  /** Which record is the legal original: said on every page. */
  legalOriginal: 'paper' | 'electronic';
  /** Percent of what is left at which reminders go out; 0 is the end. */
  reminderShares: readonly number[];
}

export function settingsOf(
  operator: Pick<OperatorRow, 'settings' | 'base'> & Partial<Pick<OperatorRow, 'tzdb'>>,
  tzdb: string,
): OperatorSettings {
  const settled = new Map(settledBy(operator).map((one) => [one.setting.key, one]));
  // The list of settings has checked that each value is one that its setting takes.
  const value = <T>(key: string): T => settled.get(key)?.value as T;
  const preset = presetOf(operator, settled);
  const { expiryInFlight, ...counting } = countingSettings(preset);
  const { base } = operator;
  const pairDayZero = value<DeferralSettings['pairDayZero']>('pairDayZero');
  return {
    deferral: {
      ...DEFAULT_SETTINGS,
      base,
      tzdb,
      newestTzdb: operator.tzdb ?? null,
      preset,
      counting: { ...counting, expiryInFlight },
      lateAfterMinutes: value('lateAfterMinutes'),
      concurrenceNeeded: value('concurrenceNeeded'),
      changeOfRow: value('changeOfRow'),
      pairDayZero,
      extensionProcedure: value('extensionProcedure'),
      inspectionList: value<readonly string[] | null>('inspectionList') ?? [],
      ownInspection: value('inspectionRule'),
    },
    judge: {
      base,
      expiryInFlight,
      counting,
      pairCountsFrom: pairDayZero,
      changeOfRow: value('changeOfRow'),
      combinationNeedsAcceptance: value('combinationNeedsAcceptance'),
      budget: value('budget'),
    },
    releaseWording: value('releaseWording'),
    releaseName: value('releaseName'),
    repetitive: {
      times: value('repetitiveCount'),
      within: {
        days: orNone(value('repetitiveDays')),
        flights: orNone(value('repetitiveSectors')),
        flightMinutes: orNone(value<number>('repetitiveHours') * 60),
      },
      alikeBy: value('repetitiveAlikeBy'),
    },
    legalOriginal: value('legalOriginal'),
    reminderShares: value<string[]>('reminderShares').map(percentOf),
  };
}

/** A window of 0 is none. */
const orNone = (value: number): number | null => (value === 0 ? null : value);

/** The preset that was chosen, with the operator's own values in place of those it settled otherwise. */
function presetOf(operator: Pick<OperatorRow, 'settings'>, settled: ReadonlyMap<string, Settled>): Preset {
  const named = presetNamed(presetChosen(operator));
  const { extension } = named;
  const overridden = [...settled.values()].some(({ own: set }) => set !== null);
  return {
    ...named,
    name: overridden ? 'custom' : named.name,
    countsFrom: ownOr(settled, 'countsFrom', named.countsFrom),
    expiryInFlight: ownOr(settled, 'expiryInFlight', named.expiryInFlight),
    hourClock: ownOr(settled, 'hourClock', named.hourClock),
    hoursCountedAt: ownOr(settled, 'hoursCountedAt', named.hoursCountedAt),
    rampReturnMakesFlightDay: ownOr(settled, 'rampReturnMakesFlightDay', named.rampReturnMakesFlightDay),
    flightDay: ownOr(settled, 'flightDay', named.flightDay),
    equalityAtLimit: ownOr(settled, 'equalityAtLimit', named.equalityAtLimit),
    designatedStations: ownOr(settled, 'designatedStations', named.designatedStations),
    bases: ownOr(settled, 'bases', named.bases),
    opportunityMinutes: ownOr(settled, 'opportunityMinutes', named.opportunityMinutes),
    melStops: ownOr(settled, 'melStops', named.melStops),
    extension: {
      ...extension,
      categories: ownOr(settled, 'extensionCategories', extension.categories),
      times: ownOr(settled, 'extensionTimes', extension.times, (name) => timesNamed(String(name))),
      notice: ownOr(settled, 'extensionNotice', extension.notice, (name) => noticeNamed(String(name))),
      needsAgreement: ownOr(settled, 'extensionNeedsAgreement', extension.needsAgreement),
    },
  };
}

/** What the list of settings takes for this key is a T, or `read` makes one of it. */
function ownOr<T>(
  settled: ReadonlyMap<string, Settled>,
  key: string,
  otherwise: Sourced<T>,
  read: (value: SettingValue) => T = (value) => value as T,
): Sourced<T> {
  const own = settled.get(key)?.own ?? null;
  if (own === null) return otherwise;
  return { value: read(own.value), source: `the operator's own: ${own.reason}`, mark: 'DERIVED' };
}
