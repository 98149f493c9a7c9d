import { describe, expect, it } from 'vitest';
import { PRESETS } from '#intervals';
import { PRESET_CHOICES } from '../settings/setting.js';
import { misfitOfSetting } from '../settings/setting-value.js';
import { SETTINGS, settledBy } from '../settings/settled.js';
import { settingsOf } from './operator-settings.js';

const operator = (settings: Record<string, unknown> = {}, base = 'UTC') => ({ settings, base });
const of = (settings: Record<string, unknown> = {}, base = 'UTC') => settingsOf(operator(settings, base), '2026a');

describe('the settings of an operator', () => {
  it('are those of its preset, as data of that regime', () => {
    for (const name of ['easa', 'faa', 'tcca-2006', 'tcca-2022'] as const) {
      expect(of({ preset: name }).deferral.preset).toEqual(PRESETS[name]);
    }
    expect(of().deferral.preset).toEqual(PRESETS.easa);
    const { extension, name } = of({ preset: 'custom' }).deferral.preset as (typeof PRESETS)['easa'];
    expect([name, extension.categories.value]).toEqual(['custom', []]);
  });

  it('take the own value before that of the preset, everywhere it is used', () => {
    const set = {
      expiryInFlight: 'arrival-inside',
      hourClock: 'block',
      pairDayZero: 'first-record',
      changeOfRow: 'own-window',
      lateAfterMinutes: 15,
      extensionCategories: ['B'],
      extensionTimes: 'any number',
      extensionNotice: '10 days',
      extensionProcedure: 'OM-A 8.6.1',
      combinationNeedsAcceptance: false,
    };
    const { deferral, judge } = of({ preset: 'faa', ...set }, 'Europe/Paris');
    const { extension } = deferral.preset as (typeof PRESETS)['easa'];
    expect([extension.categories.value, extension.times.value, extension.notice.value]).toEqual([
      ['B'],
      null,
      { hours: 240 },
    ]);
    expect(deferral).toMatchObject({
      base: 'Europe/Paris',
      pairDayZero: 'first-record',
      lateAfterMinutes: 15,
      extensionProcedure: 'OM-A 8.6.1',
      counting: { hourClock: 'block', expiryInFlight: 'arrival-inside' },
    });
    expect(judge).toMatchObject({
      base: 'Europe/Paris',
      expiryInFlight: 'arrival-inside',
      pairCountsFrom: 'first-record',
      changeOfRow: 'own-window',
      combinationNeedsAcceptance: false,
      counting: { hourClock: 'block', hoursCountedAt: 'arrival', rampReturnMakesFlightDay: false },
    });
  });

  it('fall back to the preset where what is stored fits no setting', () => {
    const broken = {
      preset: 'nobody',
      expiryInFlight: 'whenever',
      budget: -1,
      combinationNeedsAcceptance: 'no',
      extensionCategories: ['A'],
      extensionTimes: '0',
      releaseWording: '  ',
      lateAfterMinutes: 1.5,
      reasons: 'none',
    };
    expect(of(broken)).toEqual(of());
  });
});

describe('the list of settings', () => {
  it('has for each preset a value that fits, with its source and how well it is known', () => {
    for (const setting of SETTINGS) {
      for (const choice of PRESET_CHOICES) {
        const { value, source, mark } = setting.valueIn(choice);
        expect([setting.key, choice, misfitOfSetting(setting, value)]).toEqual([setting.key, choice, null]);
        expect(source.length).toBeGreaterThan(10);
        expect(mark).toMatch(/^(SEEN|SEEN-Q|SEEN-2|DERIVED|FROM MEMORY|COMMON PRACTICE)$/);
      }
    }
  });

  it('names each setting once', () => {
    expect(new Set(SETTINGS.map(({ key }) => key)).size).toBe(SETTINGS.length);
  });

  it('keeps the reason beside an own value', () => {
    const set = { hourClock: 'block', reasons: { hourClock: 'MEL preamble 2' } };
    const own = settledBy(operator(set)).flatMap((one) => (one.own ? [[one.setting.key, one.own]] : []));
    expect(own).toEqual([['hourClock', { value: 'block', reason: 'MEL preamble 2' }]]);
    const base = settledBy(operator({}, 'Europe/Paris')).find(({ setting }) => setting.key === 'timeBase');
    expect(base).toMatchObject({ value: 'Europe/Paris', own: { value: 'Europe/Paris', reason: '' } });
  });
});
