/**
 * Published checks D-05 (FAA: wording as quoted, SEEN-Q; EASA: the authority's own text, SEEN) and D-06 (as quoted,
 * SEEN-Q): what holds for the flight on which something was found. Under the other presets no text was read.
 */
import { describe, expect, it } from 'vitest';
import { CUSTOM, PRESETS } from '#intervals';
import { aircraftGates } from '../flying/aircraft-gates.js';
import { writtenUp } from '../invented.fixture.js';
import { onItsFlight } from './on-its-flight.js';

const stops = (name: keyof typeof PRESETS) => PRESETS[name].melStops;
const EVERY = [...Object.values(PRESETS), CUSTOM];

describe('D-05: found under its own power, before take-off power', () => {
  it('FAA (SEEN-Q): the MEL still applies and a decision is needed before take-off', () => {
    const found = onItsFlight('own-power', stops('faa'));
    expect(found).toMatchObject({ holds: 'decide-before-take-off', mark: 'SEEN-Q', source: stops('faa').source });
    expect(found?.words).toContain('a decision under it is needed before take-off');
  });

  it('EASA (SEEN): the commander judges, and may consult the MEL', () => {
    const found = onItsFlight('own-power', stops('easa'));
    expect(found).toMatchObject({ holds: 'commander-judges', mark: 'SEEN', source: stops('easa').source });
    expect(found?.words).toContain('for the commander to judge, who may consult the MEL');
  });

  it.each(['tcca-2006', 'tcca-2022'] as const)('%s: not known, since no text was read', (name) => {
    expect(onItsFlight('own-power', stops(name))?.holds).toBe('not-known');
    expect(onItsFlight('own-power', CUSTOM.melStops)?.holds).toBe('not-known');
  });
});

it.each(EVERY)(
  'D-06 (SEEN-Q) under $name: after take-off no relief, dealt with before the next departure',
  (preset) => {
    const found = onItsFlight('after-take-off', preset.melStops);
    expect(found).toMatchObject({ holds: 'no-relief', mark: 'SEEN-Q' });
    expect(found?.source).toContain('121.627(b)');
    expect(found?.words).toContain('before the next departure');
  },
);

it.each(EVERY)(
  'under $name: before the aircraft moved the MEL applies, and what nobody said is not guessed',
  (preset) => {
    expect(onItsFlight('before-moving', preset.melStops)?.holds).toBe('mel-applies');
    expect(onItsFlight(null, preset.melStops)).toBe(null);
  },
);

it('keeps the aircraft on the ground afterwards, whatever holds for that flight', () => {
  const at = '2026-01-26T10:00:00Z';
  for (const whenFound of ['before-moving', 'own-power', 'after-take-off'] as const) {
    expect(aircraftGates([writtenUp(at, { whenFound })], [], [], at).unanswered).toHaveLength(1);
  }
});

it('is kept as it was said, and an act without it stays without it', () => {
  const at = '2026-01-26T10:00:00Z';
  const life = writtenUp(at, { whenFound: 'own-power' });
  expect([life.whenFound, life.acts[0]]).toEqual(['own-power', expect.objectContaining({ whenFound: 'own-power' })]);
  const unsaid = writtenUp(at, { occurredAt: at });
  expect(unsaid.whenFound).toBe(null);
  expect(unsaid.acts[0]).not.toHaveProperty('whenFound');
});
