/**
 * A manual goes on: its revision is recorded, the cards written from an older one wait, somebody authorised holds each
 * against it and confirms. 145.A.45(a)(d). What is refused on the way is refused in words, and changes nothing.
 */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { doSteps } from '../support/do-card.js';
import { CardsScene } from './cards-scene.js';

let scene: CardsScene;

beforeAll(async () => {
  const names = ['odrin', 'wick', 'ressa', 'sennet', 'wenna', 'hebba'];
  scene = await CardsScene.begin('2026-01-15T12:12:00.000Z', names);
});

afterAll(() => scene.stop());

const TASK = '29-13-11 task 8';
const CARD = { aircraftType: 'Kellwing', card: 'case-drain-filter' };

const record = (by: string, revision: string, issuedOn: string, more: object = { task: TASK }) =>
  scene.person(by).post('/api/manual-revisions', { manual: 'K-AMM', revision, issuedOn, ...more });

const notRecorded = (by: string, revision: string, issuedOn: string) =>
  scene.person(by).refused('POST', '/api/manual-revisions', {
    body: { manual: 'K-AMM', task: TASK, revision, issuedOn },
  });

async function line(card = CARD.card): Promise<Shapes['CardList']['cards'][number] | undefined> {
  const { cards } = await scene.person('odrin').get<Shapes['CardList']>('/api/cards');
  return cards.find((one) => one.card === card);
}

const statementFor = (by: ApiClient, against: string) =>
  by.send<Shapes['Statement']>(
    'GET',
    `/api/card-confirmations/statement?${new URLSearchParams({ ...CARD, against }).toString()}`,
  );

async function confirmation(by: ApiClient, against: string) {
  const { body } = await statementFor(by, against);
  return { ...CARD, against, sign: { secret: by.secret, statement: body.statement } };
}

const notConfirmed = async (name: string, body: object) =>
  scene.person(name).refused('POST', '/api/card-confirmations', { body });

describe('a revision of a manual', () => {
  it('is recorded by those who keep the documents, and by nobody else', async () => {
    for (const name of ['odrin', 'hebba']) {
      expect((await notRecorded(name, '13', '2026-01-10')).code).toBe('role-missing');
    }
    expect((await line())?.newerRevision).toBeNull();
  });

  it('that is older than the one a card was written from changes nothing', async () => {
    await record('wenna', '11', '2025-06-01');
    expect((await line())?.newerRevision).toBeNull();
  });

  it('is refused with a day to come, or no day at all, at its field', async () => {
    const future = await notRecorded('sennet', '13', '2036-01-10');
    expect([future.status, future.errors]).toEqual([
      422,
      [{ pointer: '/issuedOn', reason: 'lies in the future: today is 2026-01-15' }],
    ]);
    expect((await notRecorded('sennet', '13', '2026-02-30')).errors?.[0]?.pointer).toBe('/issuedOn');
  });

  it('of the task makes the cards of that task wait, and of no other', async () => {
    await record('sennet', '13', '2026-01-10');
    expect((await line())?.newerRevision).toMatchObject({ revision: '13', issuedOn: '2026-01-10' });
    expect((await line('start-valve-replaced'))?.newerRevision).toBeNull();
  });

  it('is recorded once', async () => {
    const again = await notRecorded('wenna', '13', '2026-01-11');
    expect([again.status, again.code]).toEqual([409, 'revision-known']);
  });

  it('recorded late does not stand before a newer one', async () => {
    await record('wenna', '12b', '2025-12-20');
    expect((await line())?.newerRevision?.revision).toBe('13');
  });
});

describe('a card that waits', () => {
  let defect: string;
  let work: string;
  const sign = () => scene.person('odrin').signRefused(defect, 'card-signatures', { act: 'card', work }, { work });

  it('is worked and not signed, and the sentence names both revisions and what to do', async () => {
    ({ defect, work } = await scene.started('Q-KEA'));
    await doSteps(scene.person('odrin'), work, { defect, pass: scene.pass, second: scene.person('wick') });
    const refused = await sign();
    expect([refused.status, refused.code, refused.detail, refused['next']]).toEqual([
      409,
      'card-not-confirmed',
      'Work card "Case-drain filter of the electric hydraulic pump changed" was written from K-AMM 29-13-11 task 8, revision 12; revision 13 of 2026-01-10 is recorded since.',
      'Ask an authorised person to hold the card against revision 13 and confirm it. The manual prevails.',
    ]);
  });

  it('is not confirmed by somebody without the authorisation, for another type, or with another secret', async () => {
    const codes = [];
    for (const name of ['odrin', 'ressa', 'wenna']) {
      codes.push((await notConfirmed(name, await confirmation(scene.person(name), '13'))).code);
    }
    expect(codes).toEqual(['authorisation-does-not-cover', 'authorisation-does-not-cover', 'no-authorisation']);
    const { sign: given, ...rest } = await confirmation(scene.person('sennet'), '13');
    const wrong = await notConfirmed('sennet', { ...rest, sign: { ...given, secret: 'not what Sennet chose' } });
    expect(wrong.code).toBe('secret-wrong');
    const other = await notConfirmed('sennet', { ...rest, sign: { ...given, statement: 'It looks the same.' } });
    expect(other.code).toBe('statement-not-shown');
    expect((await line())?.confirmed).toBeNull();
  });

  it('is not confirmed against another revision than the newest', async () => {
    for (const against of ['12b', '14']) {
      const { status } = await statementFor(scene.person('sennet'), against);
      expect(status).toBe(404);
    }
    const stale = { ...(await confirmation(scene.person('sennet'), '13')), against: '12b' };
    expect((await notConfirmed('sennet', stale)).code).toBe('not-found');
  });

  it('is confirmed once: sent again under its key it is answered as before, under another it is refused', async () => {
    const sennet = scene.person('sennet');
    const body = await confirmation(sennet, '13');
    const key = '6f1f7f5e-9a52-4d3c-8a8e-0a6f3f0f0c01';
    const first = await sennet.post('/api/card-confirmations', body, { key });
    const again = await sennet.post('/api/card-confirmations', body, { key });
    expect(again.body).toEqual(first.body);
    expect((await line())?.confirmed?.by).toBe('Sennet Aurlo');
    const replayed = await notConfirmed('sennet', body);
    expect([replayed.status, replayed.code]).toEqual([409, 'confirmed-already']);
    const { signatures } = await sennet.get<Shapes['Signatures']>('/api/signatures');
    expect(signatures.filter(({ what }) => what === 'card.confirmed')).toMatchObject([{ verifies: true }]);
  });

  it('waits again once the manual goes on, and the confirmation of before stands for nothing', async () => {
    await record('sennet', '14', '2026-01-14', {});
    expect([(await line())?.newerRevision?.revision, (await line())?.confirmed]).toEqual(['14', null]);
    expect((await sign()).detail).toContain('revision 14 of 2026-01-14 is recorded since');
    const sennet = scene.person('sennet');
    await sennet.post('/api/card-confirmations', await confirmation(sennet, '14'));
  });

  it('is signed then', async () => {
    await scene.person('odrin').sign(defect, 'card-signatures', { act: 'card', work }, { work });
    const { works } = await scene.person('odrin').get<Shapes['CardsOfDefect']>(`/api/defects/${defect}/cards`);
    expect(works[0]?.state).toBe('signed');
  });
});
