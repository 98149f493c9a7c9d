import { describe, expect, it } from 'vitest';
import { countingSettings, CUSTOM, PRESETS, presetOf, type Sourced } from '../index.js';

const sourcedIn = (holder: object): Sourced<unknown>[] =>
  Object.values(holder).flatMap((value: unknown) => {
    if (typeof value !== 'object' || value === null) return [];
    return 'mark' in value ? [value as Sourced<unknown>] : sourcedIn(value);
  });

describe.each(Object.entries(PRESETS))('the preset %s', (name, preset) => {
  it('carries its own name, and a source and a mark beside every value', () => {
    expect(preset.name).toBe(name);
    const values = sourcedIn(preset);
    expect(values).toHaveLength(16);
    for (const { source, mark } of values) {
      expect(source.length).toBeGreaterThan(5);
      expect(mark).toMatch(/^(SEEN|SEEN-Q|SEEN-2|DERIVED|FROM MEMORY|COMMON PRACTICE)$/);
    }
  });
});

it('under no regime nothing is allowed that some regime forbids', () => {
  const { extension, expiryInFlight, rampReturnMakesFlightDay, equalityAtLimit } = presetOf(CUSTOM);
  expect([expiryInFlight.value, rampReturnMakesFlightDay.value]).toEqual(['arrival-inside', true]);
  expect(equalityAtLimit.value).toBe('outside');
  expect([extension.categories.value, extension.times.value, extension.needsAgreement.value]).toEqual([[], 1, true]);
  expect(sourcedIn(CUSTOM)).toHaveLength(16);
});

it('a setting of the operator beats the preset, the others stay', () => {
  expect(countingSettings('faa', { hourClock: 'block' })).toEqual({
    expiryInFlight: 'departure-inside',
    hourClock: 'block',
    hoursCountedAt: 'arrival',
    rampReturnMakesFlightDay: false,
    flightDay: 'calendar-day',
    equalityAtLimit: 'inside',
    designatedStations: null,
    bases: null,
    opportunityMinutes: 0,
  });
});
