/**
 * Granted ten minutes late, then ferry. Two aircraft carry the same item to the last evening of its interval. One extension
 * is granted in time, the other one ten minutes after the end; the second aircraft flies home under a permit, once.
 *
 * Published story 6, DERIVED; ends by I-02 and I-13 (SEEN-Q), lateness in the sense of X-08 (DERIVED), a second one by
 * X-04 (SEEN).
 */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Shapes } from '../support/api-client.js';
import type { FlightAsked } from './an-airline.js';
import { ExtensionScene, PRESETS, REQUEST } from './extensions-scene.js';

const flight = (number: string, offBlockAt: string, onBlockAt: string, kind = 'passenger'): FlightAsked => ({
  number,
  aircraft: 'Q-ABG',
  offBlockAt: `2026-02-${offBlockAt}Z`,
  onBlockAt: `2026-02-${onBlockAt}Z`,
  facts: { 'flight.kind': kind },
});
const FLIGHTS = [
  flight('last inside', '05T20:00', '05T22:00'),
  flight('passengers', '06T09:00', '06T11:00'),
  flight('ferry', '07T09:00', '07T11:00', 'ferry'),
  flight('passengers again', '07T14:00', '07T16:00'),
  flight('ferry again', '08T09:00', '08T11:00', 'ferry'),
  flight('ferry too late', '08T23:00', '09T00:00', 'ferry'),
];

const scene = new ExtensionScene();
const inTime = { easa: '', faa: '' };
const late = { easa: '', faa: '' };
const answer = (number: string): Promise<Shapes['Verdict']> => {
  const { flights } = scene.airline('easa');
  return scene
    .as('control', 'easa')
    .get(`/api/aircraft/${scene.aircraft('easa', 'Q-ABG')}/answer?flight=${flights[number]}`);
};

beforeAll(async () => {
  await scene.open(FLIGHTS);
  for (const preset of PRESETS) {
    inTime[preset] = await scene.deferred(preset, 'Q-ABF', '33-11-01');
    late[preset] = await scene.deferred(preset, 'Q-ABG', '33-11-01');
  }
});

afterAll(() => scene.server.stop());

describe('an extension is asked for on the last evening', () => {
  it('both items end with 5 February (I-02)', async () => {
    await scene.goTo('2026-02-05T21:00:00.000Z');
    expect(await scene.lastDayOf('easa', inTime.easa)).toBe('2026-02-05');
    expect(await scene.lastDayOf('faa', late.faa)).toBe('2026-02-05');
  });

  it('what it would give is shown before anybody asks, with the arithmetic', async () => {
    const offer = await scene.offer('faa', inTime.faa);
    expect(offer).toMatchObject({
      offer: {
        procedure: 'OM-A 8.6.1',
        lastDayBefore: '2026-02-05',
        lastDay: '2026-02-15',
        endsAt: '2026-02-16T00:00:00Z',
        noticeDueAt: '2026-02-06T21:00:00Z',
      },
      refused: null,
      extensions: [],
    });
    expect(offer.offer?.explanation).toContain('extended on 5 Feb 2026 21:00 UTC by 10 days');
  });

  it('the request says why outside the control of the operator, why not in time, and the plan', async () => {
    const within = await scene.askRefused('easa', inTime.easa, { outsideOperatorsControl: false });
    expect(within).toMatchObject({ code: 'extension-reason-within-control', status: 409 });
    expect(within['paragraph']).toContain('ORO.MLR.105(f)');
    expect((await scene.askRefused('easa', inTime.easa, { plan: '  ' })).code).toBe('invalid-input');
    expect((await scene.askRefused('easa', inTime.easa, { days: 11 })).code).toBe('extension-too-long');
    expect((await scene.register('easa')).extensions).toEqual([]);
  });

  it('the engineer asks for both; nothing has moved, and the register shows what waits', async () => {
    for (const preset of PRESETS) {
      for (const defect of [inTime[preset], late[preset]]) {
        const { body, status } = await scene.ask(preset, defect);
        expect(status).toBe(201);
        expect(body.extension).toMatchObject({
          state: 'asked',
          words: 'asked for',
          asked: { by: 'Sibba Orn', at: scene.clock, plan: REQUEST.plan, parts: REQUEST.parts, days: null },
          decided: null,
          notice: null,
        });
      }
      const { extensions } = await scene.register(preset);
      expect(extensions.map(({ registration }) => registration)).toEqual(['Q-ABG', 'Q-ABF']);
      expect(await scene.lastDayOf(preset, inTime[preset])).toBe('2026-02-05');
    }
  });

  it('a later request takes the place of one that waits, and both stay in the register', async () => {
    await scene.ask('easa', inTime.easa, { plan: 'Part arrives 9 Feb' });
    const { extensions } = await scene.register('easa');
    const ours = extensions.filter(({ defect }) => defect === inTime.easa);
    expect(ours.map(({ words, asked }) => [words, asked.plan])).toEqual([
      ['asked for', 'Part arrives 9 Feb'],
      ['replaced by a later request', REQUEST.plan],
    ]);
  });
});

describe('it is granted by another person, at 23:30', () => {
  let readInTime: { secret: string; statement: string };

  it('not by the one who asked, not without the privilege, and not unread', async () => {
    await scene.goTo('2026-02-05T23:30:00.000Z');
    const same = await scene.as('engineer', 'easa').signRefused(inTime.easa, 'extension', { act: 'extend' });
    expect(same).toMatchObject({ code: 'same-person-granting', status: 403, paragraph: 'AMC1 ORO.MLR.105(f)' });
    const other = await scene.as('technician', 'easa').signRefused(inTime.easa, 'extension', { act: 'extend' });
    expect(other).toMatchObject({ code: 'authorisation-does-not-cover', status: 403 });
    const granter = scene.as('granter', 'easa');
    const unread = await granter.refused('POST', `/api/defects/${inTime.easa}/extension`, {
      ifMatch: await granter.seen(inTime.easa),
      body: { sign: { secret: granter.secret, statement: 'I grant it.' } },
    });
    expect(unread.code).toBe('statement-not-shown');
    expect(await scene.lastDayOf('easa', inTime.easa)).toBe('2026-02-05');
  });

  it('the statement names the result, and the deadline moves by the interval once (I-13)', async () => {
    for (const preset of PRESETS) {
      const done = await scene.grant(preset, inTime[preset]);
      expect(done.signed?.statement).toBe(
        `I grant the extension of the interval of defect Q-ABF/1 on Q-ABF: to the end of 15 Feb 2026 instead of 5 Feb 2026, under procedure OM-A 8.6.1, as asked for on 5 Feb 2026 21:00 UTC. I have read why it was not rectified in time, that the reason lies outside the operator's control, and the plan.`,
      );
      expect(done.defect.deadline).toMatchObject({
        lastDay: '2026-02-15',
        endsAt: '2026-02-16T00:00:00Z',
        over: false,
      });
      expect(done.explanation).toContain('Then extended on 5 Feb 2026 23:30 UTC by 10 days');
    }
    readInTime = await scene.as('granter', 'easa').signature(late.easa, { act: 'extend' });
  });

  it('ten minutes after the end it is refused, also under a statement read before it', async () => {
    scene.clock = '2026-02-06T00:10:00.000Z';
    const granter = scene.as('granter', 'easa');
    const ifMatch = await granter.seen(late.easa);
    const body = { sign: readInTime };
    const refusal = await granter.refused('POST', `/api/defects/${late.easa}/extension`, { ifMatch, body });
    expect(refusal).toMatchObject({
      code: 'extension-after-expiry',
      status: 409,
      paragraph: 'ORO.MLR.105(e)(3) and (f)',
    });
    const unread = await granter.refused('GET', `/api/defects/${late.easa}/statement?act=extend`);
    expect(unread.code).toBe('extension-after-expiry');
    const { offer, refused } = await scene.offer('easa', late.easa);
    expect([offer, refused?.paragraph]).toEqual([null, 'ORO.MLR.105(e)(3) and (f)']);
    const { extensions } = await scene.register('easa');
    const waiting = extensions.find(({ defect }) => defect === late.easa);
    expect(waiting?.words).toBe('asked for, and not granted before the interval ended');
    expect(await scene.lastDayOf('easa', late.easa)).toBe('2026-02-05');
  });

  it('a second one is refused (X-04), in the request, in the offer and in the statement', async () => {
    for (const preset of PRESETS) {
      const refusal = await scene.askRefused(preset, inTime[preset]);
      expect(refusal).toMatchObject({
        code: 'second-extension',
        detail: 'Defect Q-ABF/1 was extended once, at 2026-02-05T23:30:00.000Z.',
      });
      const { refused } = await scene.offer(preset, inTime[preset]);
      expect(refused?.paragraph).toBe('ORO.MLR.105(f); FAA Order 8900.1 4-689');
      const statement = `/api/defects/${inTime[preset]}/statement?act=extend`;
      expect((await scene.as('granter', preset).refused('GET', statement)).code).toBe('no-extension-asked');
    }
  });
});

describe('the aircraft whose interval ended flies home under a permit', () => {
  const permit = {
    kind: 'permit',
    number: 'PF-12',
    authority: 'Authority of the state of registry',
    limit: 'one flight to the base, no passengers',
    conditions: ['no passengers'],
    from: '2026-02-06T00:00:00Z',
    until: '2026-02-09T00:00:00Z',
    flights: 1,
    kindsOfFlight: ['ferry'],
  };
  const act = { act: 'enter-document' };

  it('on 6 February no flight may leave', async () => {
    for (const number of ['passengers', 'ferry']) expect((await answer(number)).verdict).toBe('may-not-fly');
    expect((await answer('passengers')).reasons[0]).toContain('The last day is 2026-02-05 (UTC)');
  });

  it('the document of the authority is entered as it reads, signed, and moves no deadline', async () => {
    scene.clock = '2026-02-06T08:00:00.000Z';
    const refused = async (body: object, who: 'granter' | 'engineer' = 'granter') => {
      const entering = scene.as(who, 'easa');
      return (await entering.signRefused(late.easa, 'authority-document', act, { ...permit, ...body })).code;
    };
    expect(await refused({ until: '2026-02-06T00:00:00Z' })).toBe('grant-window-empty');
    expect(await refused({ kindsOfFlight: ['balloon'] })).toBe('invalid-input');
    expect(await refused({ flights: 0 })).toBe('invalid-input');
    expect(await refused({}, 'engineer')).toBe('authorisation-does-not-cover');
    const done = await scene.as('granter', 'easa').sign(late.easa, 'authority-document', act, permit);
    expect(done.defect.deadline?.lastDay).toBe('2026-02-05');
    expect(done.signed?.statement).toContain('It moves no deadline.');
    const { documents, history } = await scene
      .as('control', 'easa')
      .get<Shapes['DefectView']>(`/api/defects/${late.easa}`);
    const { kind: _kind, number: _number, ...said } = permit;
    expect(documents).toEqual([{ ...said, words: 'permit PF-12', enteredBy: 'Pell Ravik', enteredAt: scene.clock }]);
    expect(history.at(-1)?.words).toBe(
      'Permit PF-12 of Authority of the state of registry entered: one flight to the base, no passengers',
    );
  });

  it('that one flight may leave only under permit PF-12, and nothing else may', async () => {
    const ferry = await answer('ferry');
    expect(ferry).toMatchObject({
      verdict: 'may-fly',
      words: 'may fly only under permit PF-12',
      onlyUnder: ['permit PF-12'],
      validUntil: { because: 'permit PF-12 ends' },
    });
    expect(ferry.reasons[0]).toContain('only under permit PF-12 (one flight to the base, no passengers)');
    const refused: Record<string, string> = {
      passengers: 'it is for a ferry flight',
      'passengers again': 'it is for a ferry flight',
      'ferry again': 'its one flight is used',
      'ferry too late': 'it ends at',
    };
    for (const [number, because] of Object.entries(refused)) {
      const { verdict, words, reasons } = await answer(number);
      expect([number, verdict, words]).toEqual([number, 'may-not-fly', 'may not fly']);
      expect(reasons.join(' ')).toContain(because);
    }
    expect((await answer('last inside')).words).toBe('may fly');
  });

  it('after the landing it may not fly again', async () => {
    await scene.goTo('2026-02-07T11:05:00.000Z');
    const { operator, flights } = scene.airline('easa');
    await scene.server.store.withOperator(operator, null, async (tx) => {
      const flown = await tx.flights.get(flights['ferry'] ?? '');
      if (flown) await tx.flights.change(flown.id, flown.version, { state: 'flown' });
    });
    expect((await answer('ferry again')).verdict).toBe('may-not-fly');
    expect(await scene.lastDayOf('easa', late.easa)).toBe('2026-02-05');
  });
});
