/** What an operator settled, read from its row; anything not set takes the stricter default. */
import { DEFAULT_SETTINGS, type DeferralSettings } from '#deferrals';
import type { JudgeSettings } from '#dispatch';
import type { PresetName } from '#intervals';
import type { OperatorRow } from '#store';
import { DEFAULT_RELEASE_WORDING } from '../defects/statements.js';

export interface OperatorSettings {
  deferral: DeferralSettings;
  judge: JudgeSettings;
  releaseWording: string;
  /** Which record is the legal original: said on every page. */
  legalOriginal: 'paper' | 'electronic';
}

const PRESETS: readonly string[] = ['easa', 'faa', 'tcca-2006', 'tcca-2022'];

export function settingsOf(operator: OperatorRow, tzdb: string): OperatorSettings {
  const set = operator.settings;
  const preset = pick(set['preset'], PRESETS, 'easa') as PresetName;
  return {
    deferral: {
      ...DEFAULT_SETTINGS,
      base: operator.base,
      tzdb,
      preset,
      concurrenceNeeded: set['concurrenceNeeded'] === true,
      changeOfRow: pick(set['changeOfRow'], ['keep-earliest', 'own-window'], 'keep-earliest') as 'keep-earliest',
      pairDayZero: pick(set['pairDayZero'], ['last-record', 'first-record'], 'last-record') as 'last-record',
      extensionProcedure: typeof set['extensionProcedure'] === 'string' ? set['extensionProcedure'] : null,
    },
    judge: {
      base: operator.base,
      expiryInFlight: pick(
        set['expiryInFlight'],
        ['departure-inside', 'arrival-inside'],
        'departure-inside',
      ) as 'departure-inside',
      combinationNeedsAcceptance: set['combinationNeedsAcceptance'] !== false,
      budget: typeof set['budget'] === 'number' ? set['budget'] : 20_000,
    },
    releaseWording: typeof set['releaseWording'] === 'string' ? set['releaseWording'] : DEFAULT_RELEASE_WORDING,
    legalOriginal: pick(set['legalOriginal'], ['paper', 'electronic'], 'paper') as 'paper',
  };
}

function pick(value: unknown, allowed: readonly string[], otherwise: string): string {
  return typeof value === 'string' && allowed.includes(value) ? value : otherwise;
}
