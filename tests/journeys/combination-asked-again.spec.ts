/**
 * Maintenance control accepts a combination of open items, and is asked again when what it was given on changes: a new
 * item, a changed row, another route, other ETOPS minutes, another crew, an expired fact. Rows P-12, P-71, P-80 of T1.
 */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Shapes } from '../support/api-client.js';
import { databaseDigest } from '../support/database-digest.js';
import { PublishedRowsScene } from './published-rows-scene.js';

const flight = (number: string, offBlockAt: string, aircraft = 'Q-ABA') => ({
  number,
  aircraft,
  offBlockAt,
  onBlockAt: new Date(Date.parse(offBlockAt) + 80 * 60_000).toISOString(),
});
const scene = new PublishedRowsScene({
  at: '2026-03-10T05:00:00.000Z',
  aircraft: ['Q-ABA', 'Q-ABB'],
  flights: [
    flight('QW1', '2026-03-10T08:00:00Z'),
    flight('QW2', '2026-03-10T12:00:00Z'),
    flight('QW9', '2026-03-10T09:00:00Z', 'Q-ABB'),
  ],
  settings: { combinationNeedsAcceptance: true },
});
let apu = '';

async function accept(number: string): Promise<void> {
  const at = `/api/aircraft/${scene.aircraft('Q-ABA')}`;
  const { statement } = await scene.control.get<Shapes['Statement']>(
    `${at}/judgement-statement?judgement=combination&answer=yes`,
  );
  const sign = { secret: scene.control.secret, statement };
  const body = { judgement: 'combination', accepted: true, flight: scene.flight(number), sign };
  await scene.control.post(`${at}/judgements`, body);
}
async function gate(number: string): Promise<string> {
  const { gates } = await scene.answer('Q-ABA', number);
  const found = gates.find((one) => one.gate === 'combination');
  return found === undefined ? 'none' : `${found.now}: ${found.because}`;
}

beforeAll(async () => {
  await scene.open();
  apu = await scene.deferred('Q-ABA', '49-10-01', '2');
  await scene.deferred('Q-ABA', '30-31-05', '1');
  for (const number of ['QW1', 'QW2']) {
    await scene.say('Q-ABA', number, 'flight.etopsMinutes', 60);
    await scene.say('Q-ABA', number, 'flight.crew', 'Aldane and Brim', scene.commander);
  }
});
afterAll(() => scene.server.stop());

describe('an acceptance of the combination', () => {
  it('is asked for, given for the flight, and stands', async () => {
    expect(await gate('QW1')).toMatch(/^U: .*no answer for this flight is recorded; ask maintenance-control$/);
    await accept('QW1');
    expect(await gate('QW1')).toMatch(/^T: .*Orla Quist \(maintenance-control\) accepted it/);
    expect(await gate('QW2')).toMatch(/^U/);
  });

  it.each([
    ['ETOPS minutes', 'flight.etopsMinutes', 120, 60],
    ['the crew', 'flight.crew', 'Aldane and Corv', 'Aldane and Brim'],
  ])('is asked again when %s change, and stands once they are back', async (_what, key, changed, back) => {
    const by = key === 'flight.crew' ? scene.commander : scene.control;
    await scene.say('Q-ABA', 'QW1', key, changed, by);
    expect(await gate('QW1')).toMatch(new RegExp(`^U: .*was ${back} and is ${changed}; ask maintenance-control$`));
    await scene.say('Q-ABA', 'QW1', key, back, by);
    expect(await gate('QW1')).toMatch(/^T/);
  });

  it('is asked again when the row changes, and accepted anew', async () => {
    await scene.changeRow(apu, '1');
    expect(await gate('QW1')).toMatch(/^U: .*the row of Auxiliary power unit \(APU\) 1 is another now/);
    await accept('QW1');
    expect(await gate('QW1')).toMatch(/^T/);
  });

  it('is asked again on a new item', async () => {
    await scene.deferred('Q-ABA', '34-10-01-5', '1', '3');
    expect(await gate('QW1')).toMatch(/^U: .*Air-data unit 3 3 is new since|^U: .* is new since/);
    await accept('QW1');
    expect(await gate('QW1')).toMatch(/^T/);
  });
});

describe('another aircraft on a flight', () => {
  it('is answered with its own items and the route as it is known, and nothing is stored', async () => {
    await scene.deferred('Q-ABB', '49-10-01', '1');
    const before = await databaseDigest(scene.server.ownerUrl);
    const verdict = await scene.ask('Q-ABB', 'QW1', {});
    expect(verdict).toMatchObject({ aircraft: 'Q-ABB', flight: scene.flight('QW1') });
    expect(verdict.items.map(({ entry, row }) => [entry, row])).toEqual([['49-10-01', '1']]);
    expect(verdict.reasons.join()).toContain('ETOPS diversion time: 60');
    const at = '2026-03-21T05:00:00Z';
    expect((await scene.ask('Q-ABB', 'QW1', { at })).at).toBe(at);
    const other = await scene.ask('Q-ABB', 'QW1', {
      changes: { facts: [{ key: 'flight.etopsMinutes', value: 0 }] },
    });
    expect(other.verdict).toBe('after-work');
    expect(await databaseDigest(scene.server.ownerUrl)).toEqual(before);
  });

  it('is told for no flight of another operator, and the plain answer keeps to its own flights', async () => {
    const body = { aircraft: scene.aircraft('Q-ABB'), flight: '0198c0de-0000-7000-8000-000000000000', propose: [] };
    expect(await scene.control.refused('POST', '/api/dispatch/questions', { body })).toMatchObject({
      code: 'not-found',
    });
    const address = `/api/aircraft/${scene.aircraft('Q-ABB')}/answer?flight=${scene.flight('QW1')}`;
    expect(await scene.control.refused('GET', address)).toMatchObject({ code: 'not-found' });
  });
});

describe('what would help', () => {
  it('is the row that would do, and the smallest set that refuses the other', async () => {
    await scene.say('Q-ABB', 'QW9', 'flight.etopsMinutes', 120);
    const id = scene.aircraft('Q-ABB');
    const helps = await scene.control.get<Shapes['WhatHelps']>(
      `/api/aircraft/${id}/what-helps?flight=${scene.flight('QW9')}`,
    );
    expect(helps.betterRows).toMatchObject({
      answer: { verdict: 'after-work' },
      rows: [{ entry: '49-10-01', signedRow: '1', row: '2', isChange: true }],
    });
    expect(helps.leastToFix).toBe(null);
    expect(helps.whyRefused).toMatchObject([
      { entry: '49-10-01', row: '1', because: [{ conditions: [{ id: '49-10-01/1/a' }], openItems: [] }] },
    ]);
  });

  it('is the least to fix where no row does', async () => {
    await scene.say('Q-ABB', 'QW9', 'flight.etopsMinutes', 180);
    const id = scene.aircraft('Q-ABB');
    const { leastToFix, betterRows } = await scene.control.get<Shapes['WhatHelps']>(
      `/api/aircraft/${id}/what-helps?flight=${scene.flight('QW9')}`,
    );
    expect(betterRows).toBe(null);
    expect(leastToFix?.repairs).toHaveLength(1);
    expect(leastToFix?.repairs[0]?.defects).toHaveLength(1);
  });
});
