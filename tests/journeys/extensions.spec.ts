/**
 * Granted ten minutes late, then ferry. Two aircraft carry the same item to the last evening of its interval. One extension
 * is granted in time, the other one ten minutes after the end; the second aircraft flies home under a permit, once.
 *
 * Published story 6, DERIVED; ends by I-02 and I-13 (SEEN-Q), lateness in the sense of X-08 (DERIVED), notices by X-06
 * (SEEN-Q) and X-07 (FROM MEMORY), the refusals by X-01, X-03 and X-04 (SEEN-Q).
 */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { runningServer, type RunningServer } from '../support/running-server.js';
import { type Airline, anAirline, type FlightAsked } from './an-airline.js';

const row = (category: string, interval = '') => `
          - id: '1'
            category: ${category}
            ${interval === '' ? '' : `interval: ${interval}`}
            numberInstalled: 1
            numberRequired: 0
            remarks: May be inoperative.`;
const entry = (number: string, rows: string) => `
  - number: ${number}
    title: Item ${number}
    chapter: '33'
    words: [light]
    subEntries:
      - id: all
        units: ['1']
        rows:${rows}`;
const mel = (code: string) => `
format: proviso-mel/1
document: Invented list
operator: Operator ${code}
aircraftType: Ambrel
revision: '1'
effectiveOn: 2026-01-01
notice: Invented. Never for flight.
entries:${entry('33-11-01', row('C'))}${entry('33-11-02', row('D'))}${entry('33-11-03', row('A', '4 flights'))}
`;

const FERRY = { 'flight.kind': 'ferry' };
const flight = (number: string, offBlockAt: string, onBlockAt: string, facts?: object): FlightAsked => ({
  number,
  aircraft: 'Q-ABG',
  offBlockAt: `2026-02-${offBlockAt}Z`,
  onBlockAt: `2026-02-${onBlockAt}Z`,
  ...(facts === undefined ? {} : { facts: { ...facts } }),
});
const FLIGHTS = [
  flight('last inside', '05T20:00', '05T22:00'),
  flight('passengers', '06T09:00', '06T11:00'),
  flight('ferry', '07T09:00', '07T11:00', FERRY),
  flight('passengers again', '07T14:00', '07T16:00'),
  flight('ferry again', '08T09:00', '08T11:00', FERRY),
  flight('ferry too late', '08T23:00', '09T00:00', FERRY),
];

let clock = '2026-01-26T10:00:00.000Z';
let server: RunningServer;
const airlines: Record<string, Airline> = {};
const clients: Record<string, ApiClient> = {};
const defects: Record<string, string> = {};
const PRESETS = ['easa', 'faa'] as const;

const client = (name: string): ApiClient => {
  const found = clients[name];
  if (!found) throw new Error(`${name} is not signed in`);
  return found;
};
const defect = (name: string): string => defects[name] ?? `no defect ${name}`;

async function signAllIn(): Promise<void> {
  for (const preset of PRESETS) {
    for (const who of ['technician', 'engineer', 'granter', 'helper']) {
      clients[`${who} ${preset}`] = await server.signIn(`${who}-${preset}`);
    }
  }
}

/** Written up and deferred at once on row 1 of its entry. */
async function deferred(preset: string, aircraft: string, number: string): Promise<string> {
  const technician = client(`technician ${preset}`);
  const { body } = await technician.post<Shapes['ActDone']>('/api/defects', {
    aircraft: airlines[preset]?.aircraft[aircraft],
    origin: 'crew',
    description: 'Light does not come on.',
    recordedAt: clock,
    item: { entry: number, units: ['1'] },
  });
  const { id } = body.defect;
  await technician.sign(id, 'deferral', { act: 'defer', row: '1' }, { row: '1' });
  return id;
}

const request = {
  reason: 'The part is held in customs <script>alert(1)</script>',
  outsideOperatorsControl: true,
  whyNotFixed: 'No part at any station & none to borrow',
  plan: 'Part arrives 8 Feb, fitted the same night',
  parts: 'KL-4471-2, order 7731',
};

async function ask(preset: string, id: string, over: object = {}, who = 'engineer') {
  const asking = client(`${who} ${preset}`);
  const body = { ...request, ...over };
  return asking.post<Shapes['ExtensionDone']>(`/api/defects/${id}/extension-request`, body, {
    ifMatch: await asking.seen(id),
  });
}

async function askRefused(preset: string, id: string, over: object = {}) {
  const asking = client(`engineer ${preset}`);
  const ifMatch = await asking.seen(id);
  return asking.refused('POST', `/api/defects/${id}/extension-request`, { body: { ...request, ...over }, ifMatch });
}

const register = (preset: string): Promise<Shapes['ExtensionRegister']> =>
  client(`helper ${preset}`).get('/api/extensions');
const granted = async (preset: string): Promise<Shapes['ExtensionLine']> => {
  const found = (await register(preset)).extensions.find(({ state }) => state === 'granted');
  if (!found) throw new Error('nothing was granted');
  return found;
};
const answer = (number: string): Promise<Shapes['Verdict']> =>
  client('helper easa').get(
    `/api/aircraft/${airlines['easa']?.aircraft['Q-ABG']}/answer?flight=${airlines['easa']?.flights[number]}`,
  );
const lastDayOf = async (preset: string, name: string) =>
  (await client(`helper ${preset}`).get<Shapes['DefectView']>(`/api/defects/${defect(name)}`)).defect.deadline
    ?.lastDay;

beforeAll(async () => {
  server = await runningServer({ now: () => clock });
  for (const [preset, code] of [['easa', 'QPE'] as const, ['faa', 'QPF'] as const]) {
    airlines[preset] = await anAirline(server, {
      code,
      base: 'UTC',
      aircraftType: 'Ambrel',
      settings: { preset, extensionProcedure: 'OM-A 8.6.1', combinationNeedsAcceptance: false },
      people: [
        {
          signIn: `technician-${preset}`,
          name: 'Yorvin Tesk',
          roles: ['technician'],
          privileges: ['write-up', 'defer', 'sign-procedure', 'release'],
        },
        { signIn: `engineer-${preset}`, name: 'Sibba Orn', roles: ['engineer'], privileges: ['extend', 'concur'] },
        { signIn: `granter-${preset}`, name: 'Pell Ravik', roles: ['quality'], privileges: ['extend', 'defer'] },
        { signIn: `helper-${preset}`, name: 'Mellory Gand', roles: ['mel-engineer', 'maintenance-control'] },
      ],
      aircraft: ['Q-ABF', 'Q-ABG', 'Q-ABH'],
      flights: FLIGHTS,
    });
  }
  await signAllIn();
  for (const preset of PRESETS) {
    const text = mel(preset === 'easa' ? 'QPE' : 'QPF');
    await client(`helper ${preset}`).post('/api/mel', { file: 'ambrel.yaml', text });
    defects[`${preset} in time`] = await deferred(preset, 'Q-ABF', '33-11-01');
    defects[`${preset} late`] = await deferred(preset, 'Q-ABG', '33-11-01');
  }
});

afterAll(() => server.stop());

describe('an extension is asked for on the last evening', () => {
  it('both items end with 5 February (I-02)', async () => {
    clock = '2026-02-05T21:00:00.000Z';
    await signAllIn();
    expect(await lastDayOf('easa', 'easa in time')).toBe('2026-02-05');
    expect(await lastDayOf('faa', 'faa late')).toBe('2026-02-05');
  });

  it('what it would give is shown before anybody asks, with the arithmetic', async () => {
    const offer = await client('engineer faa').get<Shapes['ExtensionOffer']>(
      `/api/defects/${defect('faa in time')}/extension`,
    );
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
    const id = defect('easa in time');
    const within = await askRefused('easa', id, { outsideOperatorsControl: false });
    expect(within).toMatchObject({
      code: 'extension-reason-within-control',
      status: 409,
      paragraph: expect.anything(),
    });
    expect((await askRefused('easa', id, { plan: '  ' })).code).toBe('invalid-input');
    expect((await askRefused('easa', id, { days: 11 })).code).toBe('extension-too-long');
    expect((await register('easa')).extensions).toEqual([]);
  });

  it('the engineer asks for both; nothing has moved, and the register shows what waits', async () => {
    for (const preset of PRESETS) {
      for (const name of ['in time', 'late']) {
        const { body, status } = await ask(preset, defect(`${preset} ${name}`));
        expect(status).toBe(201);
        expect(body.extension).toMatchObject({
          state: 'asked',
          words: 'asked for',
          asked: { by: 'Sibba Orn', at: clock, plan: request.plan, parts: request.parts, days: null },
          decided: null,
          notice: null,
        });
      }
      expect((await register(preset)).extensions.map(({ registration }) => registration)).toEqual(['Q-ABG', 'Q-ABF']);
      expect(await lastDayOf(preset, `${preset} in time`)).toBe('2026-02-05');
    }
  });

  it('a later request takes the place of one that waits, and both stay in the register', async () => {
    await ask('easa', defect('easa in time'), { plan: 'Part arrives 9 Feb' });
    const { extensions } = await register('easa');
    const ours = extensions.filter(({ defect: of }) => of === defect('easa in time'));
    expect(ours.map(({ words, asked }) => [words, asked.plan])).toEqual([
      ['asked for', 'Part arrives 9 Feb'],
      ['replaced by a later request', request.plan],
    ]);
  });
});

describe('it is granted by another person, at 23:30', () => {
  let lateStatement: { secret: string; statement: string };

  it('not by the one who asked, and not without the privilege', async () => {
    clock = '2026-02-05T23:30:00.000Z';
    const id = defect('easa in time');
    const same = await client('engineer easa').signRefused(id, 'extension', { act: 'extend' });
    expect(same).toMatchObject({ code: 'same-person-granting', status: 403, paragraph: 'AMC1 ORO.MLR.105(f)' });
    const other = await client('technician easa').signRefused(id, 'extension', { act: 'extend' });
    expect(other).toMatchObject({ code: 'authorisation-does-not-cover', status: 403 });
    const statement = 'I grant it.';
    const unread = await client('granter easa').refused('POST', `/api/defects/${id}/extension`, {
      ifMatch: await client('granter easa').seen(id),
      body: { sign: { secret: client('granter easa').secret, statement } },
    });
    expect(unread.code).toBe('statement-not-shown');
    expect(await lastDayOf('easa', 'easa in time')).toBe('2026-02-05');
  });

  it('the statement names the result, and the deadline moves by the interval once (I-13)', async () => {
    for (const preset of PRESETS) {
      const done = await client(`granter ${preset}`).sign(defect(`${preset} in time`), 'extension', {
        act: 'extend',
      });
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
    lateStatement = await client('granter easa').signature(defect('easa late'), { act: 'extend' });
  });

  it('the authority must be told within 24 hours (X-06), or within a month (X-07)', async () => {
    const due = { faa: '2026-02-06T23:30:00.000Z', easa: '2026-03-05T23:30:00.000Z' };
    for (const preset of PRESETS) {
      const { notice, decided } = await granted(preset);
      expect(decided).toEqual({ by: 'Pell Ravik', at: clock, because: null });
      expect(notice).toMatchObject({ state: 'due', late: false, dueAt: due[preset], sent: null });
    }
    expect((await granted('faa')).notice?.words).toBe('due by 6 Feb 2026 23:30 UTC');
  });

  it('ten minutes after the end it is refused, also under a statement read before it', async () => {
    clock = '2026-02-06T00:10:00.000Z';
    const id = defect('easa late');
    const granter = client('granter easa');
    const ifMatch = await granter.seen(id);
    const body = { sign: lateStatement };
    const refusal = await granter.refused('POST', `/api/defects/${id}/extension`, { ifMatch, body });
    expect(refusal).toMatchObject({
      code: 'extension-after-expiry',
      status: 409,
      paragraph: 'ORO.MLR.105(e)(3) and (f)',
    });
    const unread = await granter.refused('GET', `/api/defects/${id}/statement?act=extend`);
    expect(unread.code).toBe('extension-after-expiry');
    const offer = await granter.get<Shapes['ExtensionOffer']>(`/api/defects/${id}/extension`);
    expect(offer).toMatchObject({ offer: null, refused: { paragraph: 'ORO.MLR.105(e)(3) and (f)' } });
    const waiting = (await register('easa')).extensions.find(({ defect: of }) => of === id);
    expect(waiting?.words).toBe('asked for, and not granted before the interval ended');
    expect(await lastDayOf('easa', 'easa late')).toBe('2026-02-05');
  });

  it('a second one is refused (X-04), in the offer, in the request and in the statement', async () => {
    for (const preset of PRESETS) {
      const id = defect(`${preset} in time`);
      expect((await askRefused(preset, id)).code).toBe('second-extension');
      const offer = await client(`engineer ${preset}`).get<Shapes['ExtensionOffer']>(`/api/defects/${id}/extension`);
      expect(offer.refused?.paragraph).toBe('ORO.MLR.105(f); FAA Order 8900.1 4-689');
      const unasked = await client(`granter ${preset}`).refused('GET', `/api/defects/${id}/statement?act=extend`);
      expect(unasked.code).toBe('no-extension-asked');
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
  const sign = (who: string, body: object) =>
    client(who).sign(defect('easa late'), 'authority-document', { act: 'enter-document' }, body);

  it('on 6 February no flight may leave', async () => {
    for (const number of ['passengers', 'ferry']) expect((await answer(number)).verdict).toBe('may-not-fly');
    expect((await answer('passengers')).reasons[0]).toContain('The last day is 2026-02-05 (UTC)');
  });

  it('the document of the authority is entered as it reads, and moves no deadline', async () => {
    clock = '2026-02-06T08:00:00.000Z';
    const ask = async (body: object) =>
      client('granter easa').signRefused(
        defect('easa late'),
        'authority-document',
        { act: 'enter-document' },
        { ...permit, ...body },
      );
    expect((await ask({ until: '2026-02-06T00:00:00Z' })).code).toBe('grant-window-empty');
    expect((await ask({ kindsOfFlight: ['balloon'] })).code).toBe('invalid-input');
    expect((await ask({ flights: 0 })).code).toBe('invalid-input');
    const done = await sign('granter easa', permit);
    expect(done.defect.deadline?.lastDay).toBe('2026-02-05');
    expect(done.signed?.statement).toContain('It moves no deadline.');
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
    clock = '2026-02-07T11:05:00.000Z';
    const { operator, flights } = airlines['easa'] as Airline;
    await server.store.withOperator(operator, null, async (tx) => {
      const flown = await tx.flights.get(flights['ferry'] ?? '');
      if (flown) await tx.flights.change(flown.id, flown.version, { state: 'flown' });
    });
    await signAllIn();
    expect((await answer('ferry again')).verdict).toBe('may-not-fly');
    expect(await lastDayOf('easa', 'easa late')).toBe('2026-02-05');
  });
});

describe('the notice to the authority', () => {
  const note = async (preset: string, body: object, who = 'helper') => {
    const { id } = await granted(preset);
    const noting = client(`${who} ${preset}`);
    const { etag } = await noting.send('GET', `/api/extensions/${id}`);
    return { path: `/api/extensions/${id}/notice`, sending: { body, ifMatch: etag }, noting };
  };
  const noted = async (preset: string, body: object) => {
    const { path, sending, noting } = await note(preset, body);
    return (await noting.send<Shapes['ExtensionDone']>('POST', path, sending)).body.extension.notice;
  };
  const refused = async (preset: string, body: object, who = 'helper') => {
    const { path, sending, noting } = await note(preset, body, who);
    return (await noting.refused('POST', path, sending)).code;
  };

  it('stands out by its word when it is overdue', async () => {
    const faa = await register('faa');
    expect(faa.overdue).toBe(1);
    expect((await granted('faa')).notice).toMatchObject({
      state: 'overdue',
      late: true,
      words: 'OVERDUE: was due by 6 Feb 2026 23:30 UTC and is not sent',
    });
    expect((await register('easa')).overdue).toBe(0);
  });

  it('is sent once, not in the future and not before it was granted, and acknowledged after that', async () => {
    const sent = { what: 'sent', at: '2026-02-07T09:00:00Z', reference: 'letter 41' };
    expect(await refused('easa', { ...sent, what: 'acknowledged' })).toBe('notice-out-of-order');
    expect(await refused('easa', { ...sent, at: '2026-02-08T09:00:00Z' })).toBe('invalid-input');
    expect(await refused('easa', { ...sent, at: '2026-02-05T23:29:00Z' })).toBe('invalid-input');
    expect(await refused('easa', sent, 'technician')).toBe('role-missing');
    expect(await noted('easa', sent)).toMatchObject({ state: 'sent', late: false, sent: { by: 'Mellory Gand' } });
    expect(await refused('easa', sent)).toBe('notice-out-of-order');
    const acknowledged = { what: 'acknowledged', at: '2026-02-07T10:00:00Z', reference: 'answer 7' };
    expect(await refused('easa', { ...acknowledged, at: '2026-02-07T08:00:00Z' })).toBe('invalid-input');
    expect(await noted('easa', acknowledged)).toMatchObject({
      state: 'acknowledged',
      words: 'sent 7 Feb 2026 09:00 UTC, reference letter 41; acknowledged 7 Feb 2026 10:00 UTC, reference answer 7',
    });
    expect(await noted('faa', sent)).toMatchObject({ state: 'sent', late: true });
    expect((await granted('faa')).notice?.words).toContain('LATE: was due by 6 Feb 2026 23:30 UTC');
    expect((await register('faa')).overdue).toBe(0);
  });

  it('is refused under a version that somebody changed meanwhile', async () => {
    const { path, noting } = await note('faa', {});
    const body = { what: 'acknowledged', at: '2026-02-07T10:00:00Z', reference: 'x' };
    expect((await noting.refused('POST', path, { body, ifMatch: '"1"' })).code).toBe('changed-meanwhile');
  });

  it('prints as a document of its own, with every text in it as text', async () => {
    const { notice } = await granted('easa');
    const response = await fetch(`${server.url}${notice?.address}`, {
      headers: { cookie: client('granter easa').cookie },
    });
    expect(response.status).toBe(200);
    expect(response.headers.get('content-type')).toBe('text/html; charset=utf-8');
    expect(response.headers.get('content-security-policy')).toContain("default-src 'none'");
    const page = await response.text();
    const said = page.replace(/\s+/g, ' ');
    expect(said).toContain('&lt;script&gt;alert(1)&lt;/script&gt;');
    expect(said).not.toContain('<script');
    expect(said).toContain('none to borrow');
    expect(said).toContain('@media print');
    for (const words of [
      'MEL 33-11-01 row 1 (category C)',
      '15 Feb 2026, that is before 16 Feb 2026 00:00 UTC',
      '5 Feb 2026, that is before 6 Feb 2026 00:00 UTC',
      'Part arrives 9 Feb',
      'KL-4471-2, order 7731',
      'Pell Ravik, licence QX.granter-easa, authorisation QPE-granter-easa of Works of QPE (Q.QPE)',
      'OM-A 8.6.1',
      '5 Mar 2026 23:30 UTC',
      'reference letter 41',
      'INVENTED for demonstration',
    ])
      expect(said).toContain(words);
  });

  it('exists only for what was granted, and for nobody of another operator', async () => {
    const waiting = (await register('easa')).extensions.find(({ state }) => state === 'asked');
    const open = await client('helper easa').refused('GET', `/api/extensions/${waiting?.id}/notice`);
    expect(open.code).toBe('not-found');
    const { id } = await granted('easa');
    expect((await client('helper faa').refused('GET', `/api/extensions/${id}`)).code).toBe('not-found');
    expect((await client('helper faa').refused('GET', `/api/extensions/${id}/notice`)).code).toBe('not-found');
  });
});

describe('what the operator never extends', () => {
  it('category A and counted clocks (X-03), category D under faa (X-01) and not under easa (X-02)', async () => {
    for (const preset of PRESETS) {
      const counted = await deferred(preset, 'Q-ABH', '33-11-03');
      const refusal = await askRefused(preset, counted);
      expect(refusal).toMatchObject({ code: 'category-a-not-extendable', status: 409 });
      expect(refusal['paragraph']).toContain('ORO.MLR.105(f)');
    }
    const easa = await deferred('easa', 'Q-ABF', '33-11-02');
    const faa = await deferred('faa', 'Q-ABF', '33-11-02');
    expect((await askRefused('faa', faa)).code).toBe('category-not-extendable');
    expect((await ask('easa', easa, { days: 7 })).body.extension.asked.days).toBe(7);
  });

  it('nothing without an approved procedure', async () => {
    const { operator } = airlines['easa'] as Airline;
    await server.store.withOperator(operator, null, async (tx) => {
      const { version, settings } = await tx.operators.current();
      const { extensionProcedure: _held, ...rest } = settings;
      await tx.operators.changeSettings(version, rest);
    });
    const id = await deferred('easa', 'Q-ABH', '33-11-01');
    const refusal = await askRefused('easa', id);
    expect(refusal).toMatchObject({ code: 'no-extension-procedure', status: 409 });
    expect(refusal.next).toContain('ask the authority');
  });

  it('a request can be withdrawn by the one who made it, or declined by another, with the reason', async () => {
    const id = await deferred('faa', 'Q-ABH', '33-11-01');
    const close = async (who: string) => {
      const closing = client(`${who} faa`);
      const { body } = await closing.post<Shapes['ExtensionDone']>(
        `/api/defects/${id}/extension-request/closed`,
        { because: 'the part came' },
        { ifMatch: await closing.seen(id) },
      );
      return [body.extension.words, body.extension.decided?.because];
    };
    await ask('faa', id);
    expect(await close('engineer')).toEqual(['withdrawn', 'the part came']);
    await ask('faa', id);
    expect(await close('granter')).toEqual(['declined', 'the part came']);
    const none = await client('granter faa').refused('GET', `/api/defects/${id}/statement?act=extend`);
    expect(none.code).toBe('no-extension-asked');
  });
});

it('the record holds each step without a name in it', async () => {
  const { entries } = await client('granter faa').get<Shapes['RecordEntries']>(
    `/api/record?aircraft=${airlines['faa']?.aircraft['Q-ABF']}`,
  );
  const steps = entries.map(({ what }) => what);
  expect(steps).toEqual(expect.arrayContaining(['extension.asked', 'defect.extended', 'extension.notice-sent']));
  expect(JSON.stringify(entries.map(({ payload }) => payload))).not.toMatch(/Orn|Ravik|Gand/);
});
