/**
 * What somebody tries who has an account: to act for themselves where another has to, to be taken for somebody else, and to
 * go on after access was taken away.
 */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ApiClient, Sending, Shapes } from '../support/api-client.js';
import { Attempts } from '../support/attempts.js';
import { EventReader } from '../support/event-reader.js';
import { withClient } from '../support/with-client.js';
import { SignatureScene } from './signatures-scene.js';

const clock = '2026-01-15T12:12:00.000Z';
let scene: SignatureScene;
let attempts: Attempts;
let office: ApiClient;
let quality: ApiClient;
let defect: string;

beforeAll(async () => {
  scene = await SignatureScene.begin(() => clock, ['odrin', 'tamsel', 'ulla', 'wenna', 'kesh']);
  [office, quality] = [scene.person('ulla'), scene.person('wenna')];
  defect = await scene.written();
  attempts = await Attempts.on(scene.server.database.adminUrl);
});

afterAll(() => scene.server.stop());

const idOf = async (name: string) => (await scene.person(name).get<Shapes['SessionView']>('/api/session')).person.id;
const refused = async (by: ApiClient, method: string, path: string, sending: Sending) => {
  await attempts.changed();
  const { status, code, changed } = await attempts.refused(by, method, path, sending);
  return { status, code, changed };
};
const NOT_FOR_ONESELF = { status: 403, code: 'not-for-oneself', changed: [] };

describe('an id written in capitals, which the database takes for the same', () => {
  it('is still the own one: nobody changes their own roles, locks themselves or leaves by it', async () => {
    const own = (await idOf('ulla')).toUpperCase();
    const roles = { roles: ['administrator', 'quality'], reason: 'x' };
    expect(await refused(office, 'PUT', `/api/people/${own}/roles`, { body: roles })).toEqual(NOT_FOR_ONESELF);
    for (const act of ['lock', 'leaving', 'first-secret']) {
      const sending = { body: act === 'first-secret' ? undefined : { reason: 'x' } };
      expect(await refused(office, 'POST', `/api/people/${own}/${act}`, sending), act).toEqual(NOT_FOR_ONESELF);
    }
  });

  it('is still the own one: nobody authorises themselves by it, once or for good', async () => {
    const own = (await idOf('wenna')).toUpperCase();
    const { organisations, aircraftTypes } = await quality.get<Shapes['Members']>('/api/people');
    const scope = {
      number: 'OWN-1',
      organisation: organisations[0]?.id ?? '',
      aircraftTypes: aircraftTypes.join(','),
      privileges: 'release',
      validFrom: clock,
    };
    const once = { defect, privilege: 'release', validUntil: '2026-01-15T18:00:00Z', because: 'x' };
    for (const [kind, address, asked] of [
      ['authorisation', 'authorisations', scope],
      ['one-off', 'one-off', once],
    ] as const) {
      const query = new URLSearchParams(asked).toString();
      const shown = await quality.send<Shapes['Statement']>('GET', `/api/people/${own}/${kind}-statement?${query}`);
      const sign = { secret: quality.secret, statement: shown.body.statement ?? 'x' };
      const sending = { body: { ...asked, sign } };
      expect(await refused(quality, 'POST', `/api/people/${own}/${address}`, sending), kind).toEqual(NOT_FOR_ONESELF);
    }
  });

  it('is answered as everybody else writes it', async () => {
    const read = await scene.person('odrin').get<Shapes['DefectView']>(`/api/defects/${defect.toUpperCase()}`);
    expect(read.defect.id).toBe(defect);
    const { aircraft } = read.defect;
    const { entries } = await quality.get<Shapes['RecordEntries']>(`/api/record?aircraft=${aircraft.toUpperCase()}`);
    expect(entries.length).toBeGreaterThan(0);
  });
});

describe('a name that is read as the name of somebody else', () => {
  const body = (more: object) => ({ name: 'Perrin Oskelund', signInName: 'perrin', roles: ['technician'], ...more });
  it.each([
    ['another script', { signInName: '\u043edrin' }],
    ['other letters', { signInName: 'Odrin' }],
    ['wide letters', { signInName: '\uff4fdrin' }],
    ['a blank behind it', { signInName: 'odrin ' }],
    ['a line end in it', { signInName: 'odrin\nx' }],
    ['a sign that is not seen', { signInName: 'od\u200brin' }],
    ['a composed letter', { signInName: 'odri\u0301n' }],
    ['a name turned round', { name: '\u202eksaV nirdO' }],
    ['a name with an unseen sign', { name: 'Odrin\u2060 Vask' }],
    ['a name of two lines', { name: 'Odrin Vask\nreleased by Perrin' }],
    ['a licence turned round', { licence: '\u202e71402.66.XQ' }],
  ])('is not given: %s', async (_, more) => {
    const attempt = await refused(office, 'POST', '/api/people', { body: body(more) });
    expect(attempt).toEqual({ status: 422, code: 'invalid-input', changed: [] });
  });

  it('opens nothing at the sign-in either', async () => {
    for (const name of ['ODRIN', ' odrin', '\uff4fdrin', 'odrin\u200b', 'odrin\u0000']) {
      const sending = { body: { name, secret: scene.person('odrin').secret } };
      const { status } = await scene.server.visitor().refused('POST', '/api/session', sending);
      expect([401, 422], name).toContain(status);
    }
  });
});

describe('access that was taken away', () => {
  it('by a lock closes session, stream and calendar, until it is opened', async () => {
    const [client, id] = [await scene.server.signIn('tamsel'), await idOf('tamsel')];
    const feeds = await Promise.all(
      [{}, { everywhere: true }].map((more) =>
        client.post<Shapes['CalendarFeedMade']>('/api/calendar-feeds', { label: 'telephone', ...more }),
      ),
    );
    const read = async () => {
      const addresses = feeds.map(({ body }) => new URL(body.address ?? '', scene.server.url).pathname);
      const pages = await Promise.all(addresses.map((address) => scene.server.visitor().page(address)));
      const texts = await Promise.all(pages.map(async (page) => (page.status === 200 ? page.text() : '')));
      return texts.map((text) => text.includes('BEGIN:VEVENT'));
    };
    expect(await read()).toEqual([true, true]);
    const stream = new EventReader(await client.page('/api/events'));
    await stream.next();
    await office.post(`/api/people/${id}/lock`, { reason: 'Telephone lost.' });
    expect(await client.refused('GET', '/api/fleet')).toMatchObject({ status: 401 });
    expect(await read()).toEqual([false, false]);
    expect(await stream.ends()).toBe(true);
    await office.post(`/api/people/${id}/unlock`, { reason: 'Found.' });
    expect(await read()).toEqual([true, true]);
  });
});

describe('an administrator of another operator', () => {
  it('who locks a person of both ends what is done there, and nothing that is done here', async () => {
    const [here, there] = [await scene.server.signIn('ilva', 'QOF'), await scene.server.signIn('ilva', 'QSB')];
    const { id } = (await here.get<Shapes['SessionView']>('/api/session')).person;
    await scene.person('kesh').post(`/api/people/${id}/lock`, { reason: 'x' });
    expect(await there.refused('GET', '/api/fleet')).toMatchObject({ status: 401 });
    expect((await here.get<Shapes['Fleet']>('/api/fleet')).aircraft.length).toBeGreaterThan(0);
    const again = await scene.server.visitor().signIn('ilva');
    const { operators } = await again.get<Shapes['SessionView']>('/api/session');
    expect(operators.map(({ code }) => code)).toEqual(['QOF']);
    await scene.person('kesh').post(`/api/people/${id}/unlock`, { reason: 'x' });
  });
});

describe('what stands in the database', () => {
  it('is no way in: whoever reads the sessions there has no token', async () => {
    const { rows } = await withClient(scene.server.database.adminUrl, (database) =>
      database.query<{ token_hash: string }>('select token_hash from session'),
    );
    expect(rows.length).toBeGreaterThan(2);
    const thief = scene.server.visitor();
    for (const { token_hash: kept } of rows) {
      thief.cookie = `proviso_session=${kept}`;
      expect(await thief.refused('GET', '/api/fleet')).toMatchObject({ status: 401 });
    }
  });
});

describe('two requests at once', () => {
  it('under one Idempotency-Key with different bodies: one is done, the other never', async () => {
    const client = scene.person('odrin');
    const { aircraft } = (await client.get<Shapes['DefectView']>(`/api/defects/${defect}`)).defect;
    const writeUp = (n: number) => ({
      aircraft,
      origin: 'technician',
      description: `Light ${n} out.`,
      recordedAt: clock,
    });
    for (let round = 0; round < 5; round += 1) {
      const before = await scene.count('defect');
      const key = randomUUID();
      const sent = Array.from({ length: 6 }, (_, n) =>
        client.send<Shapes['ActDone']>('POST', '/api/defects', { key, body: writeUp(n) }),
      );
      const answers = await Promise.all(sent);
      expect(answers.filter(({ status }) => status === 200 || status === 201)).toHaveLength(1);
      expect(answers.filter(({ status }) => status === 409 || status === 422)).toHaveLength(5);
      expect(await scene.count('defect')).toBe(before + 1);
    }
  });
});
