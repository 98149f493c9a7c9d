/**
 * An operator changes what it settled. What would read otherwise is listed before, and signed; what was signed before is
 * never moved.
 *
 * The two ends of 22 Jan are rows I-22 and I-26 in the sense of the published intervals (DERIVED); category D is extended
 * under easa and not under faa by X-01 and X-02 (SEEN-Q, SEEN).
 */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { verifyRecord } from '#store';
import type { Shapes } from '../support/api-client.js';
import { change, SettingsScene } from './settings-scene.js';

const scene = new SettingsScene();
let short: string;

beforeAll(() => scene.open());
afterAll(() => scene.server.stop());

describe('what the operator settled', () => {
  it('is shown with the value in force, its source and mark, and the own value with its reason', async () => {
    const { body, etag } = await scene.view();
    expect([body.preset, etag]).toEqual(['easa', '"1"']);
    expect(body.settings.map(({ key }) => key)).toContain('rampReturnMakesFlightDay');
    expect(await scene.setting('extensionNotice')).toMatchObject({
      value: '1 month',
      preset: { words: '1 month', mark: 'FROM MEMORY', source: expect.stringContaining('one month') as string },
      own: null,
    });
    expect(await scene.setting('extensionProcedure')).toMatchObject({
      value: 'OM-A 8.6.1',
      preset: { value: null, words: 'none' },
      own: { value: 'OM-A 8.6.1' },
    });
    expect(await scene.setting('repetitiveDefect')).toBeUndefined();
  });

  it('is changed by quality or an administrator alone', async () => {
    const changes = [change('legalOriginal', 'electronic')];
    expect((await scene.refused(changes, scene.technician)).code).toBe('role-missing');
    expect((await scene.technician.refused('POST', '/api/settings/preview', { body: { changes } })).code).toBe(
      'role-missing',
    );
  });

  it('takes no value that does not fit, and says which', async () => {
    const wrong = [
      change('expiryInFlight', 'whenever'),
      change('nothing', 'x'),
      change('budget', 3),
      change('extensionCategories', ['A']),
      change('extensionCategories', ['B']),
      change('timeBase', '+01:00'),
      change('preset', 'nobody'),
    ];
    const problem = await scene.refused(wrong);
    expect(problem.code).toBe('invalid-input');
    const errors = problem.errors ?? [];
    expect(errors.map(({ pointer }) => pointer)).toEqual([
      '/changes/0/value',
      '/changes/1/key',
      '/changes/2/value',
      '/changes/3/value',
      '/changes/4/key',
      '/changes/5/value',
      '/changes/6/value',
    ]);
    for (const changes of [[], [{ key: 'budget', value: 5000 }], [change('budget', { more: 1 })], 'x']) {
      expect((await scene.refused(changes)).code).toBe('invalid-input');
    }
    expect((await scene.refused([change('expiryInFlight', 'departure-inside')])).detail).toBe(
      'Nothing would change.',
    );
    expect((await scene.view()).etag).toBe('"1"');
  });
});

describe('a change that touches nothing open', () => {
  it('takes effect with its reason, unsigned, and is recorded', async () => {
    const changes = [change('legalOriginal', 'electronic', 'The authority accepted the electronic log.')];
    expect(await scene.preview(...changes)).toMatchObject({ effects: [], statement: null });
    const { body, etag } = await scene.put(changes);
    expect(etag).toBe('"2"');
    expect(body.settings.find(({ key }) => key === 'legalOriginal')).toMatchObject({
      value: 'electronic',
      own: { reason: 'The authority accepted the electronic log.' },
    });
    const session = await scene.quality.get<Shapes['SessionView']>('/api/session');
    expect(session.operator?.legalOriginal).toBe('electronic');
  });

  it('is refused under a version that somebody changed meanwhile, and goes back to the preset with null', async () => {
    const stale = await scene.put([change('legalOriginal', 'paper')], null, '"1"');
    expect(stale.status).toBe(412);
    const { body } = await scene.put([change('legalOriginal', null, 'Back to paper.')]);
    expect(body.settings.find(({ key }) => key === 'legalOriginal')).toMatchObject({ value: 'paper', own: null });
  });
});

describe('a change that touches what is open', () => {
  const arrival = [change('expiryInFlight', 'arrival-inside')];

  it('lists each answer that would read otherwise, and changes nothing by listing', async () => {
    short = (await scene.deferred('33-11-01')).id;
    expect([(await scene.deadline(short))?.lastDay, await scene.answer()]).toEqual(['2026-01-22', 'may fly']);
    const { effects, changes, statement } = await scene.preview(...arrival);
    expect(changes).toMatchObject([
      { key: 'expiryInFlight', before: 'it must leave before the end', after: 'it must be on blocks before the end' },
    ]);
    expect(effects).toEqual([
      {
        about: 'answer',
        registration: 'Q-ABA',
        of: 'over midnight on 22 Jan 2026 23:00 UTC',
        before: 'may fly',
        after: 'may not fly',
      },
    ]);
    expect(statement).toMatch(/^I change what Operator QPS settled\. Expiry in flight: .* the 1 open deadlines/);
    expect(await scene.answer()).toBe('may fly');
  });

  it('takes no effect unsigned, under another statement, or with a wrong secret', async () => {
    const { statement } = await scene.preview(...arrival);
    const unsigned = await scene.refused(arrival);
    expect(unsigned).toMatchObject({ code: 'settings-need-signature', status: 409, statement });
    expect(unsigned['effects']).toHaveLength(1);
    const other = await scene.refused(arrival, scene.quality, {
      sign: { secret: scene.quality.secret, statement: 'I change it.' },
    });
    expect(other).toMatchObject({ code: 'statement-not-shown', statement });
    const wrong = await scene.refused(arrival, scene.quality, { sign: { secret: 'not mine', statement } });
    expect(wrong.code).toBe('secret-wrong');
    expect(await scene.answer()).toBe('may fly');
  });

  it('is shown again when the list has changed since it was read', async () => {
    const { statement } = await scene.preview(...arrival);
    await scene.server.store.withOperator(scene.airline.operator, null, async (tx) => {
      const flight = await tx.flights.get(scene.airline.flights['over midnight'] ?? '');
      if (flight) await tx.flights.change(flight.id, flight.version, { number: 'renamed' });
    });
    const sign = { secret: scene.quality.secret, statement };
    expect((await scene.refused(arrival, scene.quality, { sign })).code).toBe('statement-not-shown');
  });

  it('takes effect once it is signed', async () => {
    const { statement } = await scene.preview(...arrival);
    expect((await scene.put(arrival, statement)).status).toBe(200);
    expect([(await scene.deadline(short))?.lastDay, await scene.answer()]).toEqual(['2026-01-22', 'may not fly']);
  });

  it('another preset says what becomes of extensions (X-01, X-02) and of the notice', async () => {
    await scene.deferred('33-11-02', 'Q-ABB');
    const { effects, changes } = await scene.preview(change('preset', 'faa', 'New certificate.'));
    expect(changes.map(({ title }) => title)).toEqual([
      'Preset',
      'Categories that may be extended',
      'Notice of an extension',
      'Where the MEL stops',
      'Wording of the release',
      'Name of the release',
      'Rule of the independent inspection',
      'Occurrence report',
      'Part without certificate',
    ]);
    expect(effects).toEqual([
      {
        about: 'extension',
        registration: 'Q-ABA',
        of: 'Q-ABA/1',
        before: 'may be extended to 25 Jan 2026, notice: 1 month',
        after: 'may be extended to 25 Jan 2026, notice: 24 hours',
      },
      {
        about: 'extension',
        registration: 'Q-ABB',
        of: 'Q-ABB/1',
        before: 'may be extended to 16 Sep 2026, notice: 1 month',
        after: 'may not be extended: not a category that may be extended',
      },
    ]);
  });

  it('a time base never moves an open deadline: it stays, and what is deferred next counts anew (I-22)', async () => {
    const changes = [change('timeBase', 'Europe/Paris')];
    const { effects, statement } = await scene.preview(...changes);
    const open = effects.find(({ about, of }) => about === 'deadline' && of === 'Q-ABA/1');
    expect(open).toMatchObject({
      before: 'last day 22 Jan 2026, before 23 Jan 2026 00:00 UTC',
      after:
        'stays as signed; counted anew it would be last day 22 Jan 2026, before 22 Jan 2026 23:00 UTC (23 Jan 2026 00:00 Europe/Paris)',
    });
    expect((await scene.put(changes, statement)).status).toBe(200);
    const { defect } = await scene.technician.get<Shapes['DefectView']>(`/api/defects/${short}`);
    expect(defect.deadline).toMatchObject({ lastDay: '2026-01-22', endsAt: '2026-01-23T00:00:00Z', base: 'UTC' });
    scene.clock = '2026-01-19T23:30:00.000Z';
    const next = await scene.deferred('33-11-01', 'Q-ABB');
    expect(next.deadline).toMatchObject({
      lastDay: '2026-01-23',
      endsAt: '2026-01-23T23:00:00Z',
      base: 'Europe/Paris',
    });
  });

  it('a counted item tells how what is left of it reads, while its limit stays', async () => {
    const counted = await scene.deferred('33-11-03', 'Q-ABB');
    await scene.server.store.withOperator(scene.airline.operator, null, async (tx) => {
      await tx.flights.add({
        aircraftId: scene.airline.aircraft['Q-ABB'] ?? '',
        number: 'flown',
        fromStation: 'QWA',
        toStation: 'QWB',
        offBlockAt: '2026-01-20T06:00:00Z',
        onBlockAt: '2026-01-20T08:10:00Z',
        flightMinutes: 115,
        state: 'flown',
      });
    });
    scene.clock = '2026-01-20T09:00:00.000Z';
    const { effects, statement } = await scene.preview(change('hourClock', 'block'));
    const later = '2026-01-20T09:07:00.000Z';
    expect(statement).not.toBeNull();
    scene.clock = later;
    expect((await scene.preview(change('hourClock', 'block'))).statement).toBe(statement);
    const use = effects.find(({ about, of }) => about === 'use' && of === counted.number);
    expect(use?.before).toContain('4 h 5 min');
    expect(use?.after).toContain('3 h 50 min');
  });
});

it('a pair that counts from its first record stays as signed too', async () => {
  await scene.goTo('2026-01-20T20:00:00.000Z');
  await scene.deferred('33-11-04', 'Q-ABB', '1');
  await scene.goTo('2026-01-21T09:00:00.000Z');
  const second = await scene.deferred('33-11-04', 'Q-ABB', '2');
  expect(second.deadline?.lastDay).toBe('2026-01-24');
  const { effects } = await scene.preview(change('pairDayZero', 'first-record'));
  const open = effects.filter(({ about }) => about === 'deadline');
  expect(open.map(({ of }) => of)).toEqual([second.number]);
  expect(open[0]?.before).toContain('last day 24 Jan 2026');
  expect(open[0]?.after).toContain('counted anew it would be last day 23 Jan 2026');
});

it('the record holds every change with its reason and what it did, and verifies', async () => {
  await expect
    .poll(async () => {
      const findings = await verifyRecord(scene.server.ownerUrl);
      return findings.map(({ misfit, waiting }) => ({ misfit, waiting }));
    })
    .toEqual([{ misfit: null, waiting: 0 }]);
  const changes = await scene.server.store.withOperator(scene.airline.operator, null, async (tx) => {
    const entries = await tx.record.sealedAfter(0, 1000);
    return entries.map(({ entry }) => entry).filter(({ what }) => what === 'settings.changed');
  });
  expect(changes).toHaveLength(4);
  const signed = changes.map(({ payload }) => payload['signature'] !== undefined);
  expect(signed).toEqual([false, false, true, true]);
  expect(changes[2]?.payload).toMatchObject({
    changes: [{ key: 'expiryInFlight', reason: 'MEL preamble, revision 7' }],
    effects: [{ about: 'answer', of: 'renamed on 22 Jan 2026 23:00 UTC' }],
  });
  expect(JSON.stringify(changes)).not.toMatch(/Drost|Fenn/);
});
