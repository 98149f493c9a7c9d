import { describe, expect, it } from 'vitest';
import { factKey, questionOf, readFactKey } from './fact-key.js';
import { misfitOf, slipOf } from './fact-value.js';
import { FACTS, factOf } from './facts.js';

describe('the registry of facts', () => {
  it('names each fact once, by a family and a name', () => {
    expect(new Set(FACTS.map(({ id }) => id)).size).toBe(FACTS.length);
    for (const { id } of FACTS) expect(id).toMatch(/^(aircraft|entry|flight|work|judgement)\.[a-zA-Z]+$/);
  });

  it('gives each fact somebody to answer it, and a question that ends as one', () => {
    for (const fact of FACTS) {
      expect(fact.mayAnswer.length).toBeGreaterThan(0);
      expect(fact.question).toMatch(/\?$/);
      expect(fact.question.includes('{subject}')).toBe(fact.subject !== 'none');
      expect(fact.unit !== undefined).toBe(fact.type === 'number' && fact.id !== 'aircraft.serial');
    }
  });

  it('lets dispatcher or commander, not the technician, say whether there is icing', () => {
    expect(factOf('flight.icing')?.mayAnswer).toEqual(['dispatcher', 'commander']);
  });

  it('knows nothing of facts it does not list', () => {
    for (const id of ['flight.luck', '__proto__', 'constructor', 'toString', '']) expect(factOf(id)).toBeUndefined();
  });
});

describe('a fact key', () => {
  const leaf = (fact: string, params?: object) => ({ fact, ...(params === undefined ? {} : { params }) });

  it('names fact and subject, and units in one order', () => {
    expect(factKey(leaf('flight.icing'))).toBe('flight.icing');
    expect(factKey(leaf('flight.minimaNeed', { entry: '22-10-01' }))).toBe('flight.minimaNeed[22-10-01]');
    expect(factKey(leaf('entry.up', { entry: '32-42-01', units: ['2', '1'] }))).toBe('entry.up[32-42-01/1+2]');
    expect(factKey(leaf('work.done', { work: '32-42-01/1/M1' }))).toBe('work.done[32-42-01/1/M1]');
    expect(factKey(leaf('judgement.accepted', { judgement: 'combination' }))).toBe('judgement.accepted[combination]');
  });

  it('can be taken apart again', () => {
    expect(readFactKey('flight.icing')).toMatchObject({ fact: { id: 'flight.icing' }, subject: null });
    expect(readFactKey('flight.minimaNeed[22-10-01]')).toMatchObject({ subject: '22-10-01' });
    for (const key of ['flight.icing[x]', 'flight.minimaNeed', 'flight.luck', 'flight.icing[', '', '__proto__']) {
      expect(readFactKey(key)).toBeNull();
    }
  });

  it('turns into a question about its subject', () => {
    const asked = leaf('flight.minimaNeed', { entry: '22-10-01' });
    expect(questionOf(asked, () => 'the autopilot')).toBe(
      'Do the approach minima used on this flight need the autopilot?',
    );
    expect(questionOf(asked, () => '$& $1')).toContain('need $& $1?');
    expect(questionOf(leaf('flight.icing'))).toBe('Is icing known or forecast anywhere on the flight?');
  });
});

describe('an answer of somebody', () => {
  const slip = (id: string, value: unknown) => {
    const fact = factOf(id);
    return fact === undefined ? 'no fact' : slipOf(fact, value);
  };

  it('is a number that there can be, the bounds themselves among them', () => {
    expect(['flight.level', 'flight.etopsMinutes'].map((id) => slip(id, 0))).toEqual([null, null]);
    expect([slip('flight.level', 600), slip('flight.temperature', -90)]).toEqual([null, null]);
    expect(slip('flight.level', -1)).toBe('-1 is not from 0 to 600 hundreds of feet');
    expect(slip('flight.level', 31_000)).toBe('31000 is not from 0 to 600 hundreds of feet');
    expect(slip('flight.level', '310')).toBe('"310" is not a number');
    expect(slip('flight.icing', 'severe')).toBe('"severe" is none of none, forecast, known');
  });
});

describe('a value of a fact', () => {
  const misfit = (id: string, value: unknown) => {
    const fact = factOf(id);
    return fact === undefined ? 'no fact' : misfitOf(fact, value);
  };

  it('fits type and choices, or is refused by name', () => {
    expect(misfit('flight.icing', 'forecast')).toBeNull();
    expect(misfit('flight.icing', 'severe')).toBe('"severe" is none of none, forecast, known');
    expect(misfit('flight.rvsm', false)).toBeNull();
    expect(misfit('flight.rvsm', 'false')).toBe('"false" is not true or false');
    expect(misfit('flight.level', 310)).toBeNull();
    expect(misfit('flight.level', Number.NaN)).toBe('NaN is not a number');
    expect(misfit('aircraft.type', 'T1')).toBeNull();
    expect(misfit('aircraft.type', '')).toMatch(/empty/);
    expect(misfit('flight.icing', null)).toBe('null is not a text');
  });
});
