import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { readMovements, type MovementEvent, type ReadingSettings, type Transmission } from './index.js';

/** A worked case. What is left out is not checked, but for the tray, which is then empty. */
interface Case {
  name: string;
  source: string;
  mark: 'SEEN' | 'C' | 'OWN';
  receivedAt?: string;
  text?: string;
  transmissions?: Transmission[];
  settings?: Partial<ReadingSettings>;
  sameAs?: string;
  message?: object;
  warnings?: string[];
  events?: string[];
  legs?: object[];
  counters?: object;
  notDiverted?: true;
  tray?: string[];
}

const path = new URL('../../../tests/cases/movements.yaml', import.meta.url);
const cases = parse(readFileSync(path, 'utf8')) as Case[];
const read = (one: Case) => {
  const settings = one.settings ?? {};
  if (one.transmissions) return readMovements(one.transmissions, settings);
  return readMovements(one.text as string, { receivedAt: one.receivedAt, ...settings });
};

describe('movement messages', () => {
  it.each(cases)('$name ($mark)', (one) => {
    const { messages, events, legs, counters, tray } = read(one);
    expect(tray.map(({ reason }) => reason)).toEqual(one.tray ?? []);
    if (one.sameAs === undefined || one.legs) expect(legs).toHaveLength(one.legs?.length ?? 0);
    if (one.events) expect(events.map(written)).toEqual(one.events);
    if (one.legs) expect(legs).toMatchObject(one.legs);
    if (one.notDiverted) expect(legs.map(({ diverted }) => diverted)).toEqual(legs.map(() => undefined));
    if (one.counters) expect(counters).toMatchObject(one.counters);
    if (one.message) expect(messages).toMatchObject([one.message]);
    if (one.warnings) expect(messages.flatMap(({ warnings }) => warnings)).toEqual(one.warnings);
  });

  it.each(cases.filter(({ sameAs }) => sameAs !== undefined))('$name gives the same legs', (one) => {
    const other = cases.find(({ name }) => name === one.sameAs) as Case;
    expect(read(one).legs).toEqual(read(other).legs);
    expect(read(one).events).toEqual(read(other).events);
  });

  it('name their source and mark in every case', () => {
    for (const { name, source, mark } of cases) {
      expect(name && source, name).toBeTruthy();
      expect(['SEEN', 'C', 'OWN'], name).toContain(mark);
    }
    expect(new Set(cases.map(({ name }) => name)).size).toBe(cases.length);
  });
});

function written({ kind, at, airport, standing }: MovementEvent): string {
  return `${kind} ${at} ${airport} ${standing}`;
}
