/**
 * A second person signs a step by a passkey, on the device of whoever does it (WebAuthn level 3): it is good for that
 * person, statement, step and session, once and for minutes, and signs nobody in. Whatever else is sent signs nothing.
 */
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { Shapes } from '../support/api-client.js';
import { doSteps, secondSigns } from '../support/do-card.js';
import { demoSecret, runningServer } from '../support/running-server.js';
import { type Asked, type Lies, SoftAuthenticator } from '../support/soft-authenticator.js';
import { act, CardsScene, refused } from './cards-scene.js';

const ORIGIN = 'https://proviso.example';
const NAMES = ['odrin', 'wick', 'ressa', 'wenna', 'tamsel', 'ulla', 'kesh'];
const used = [{ what: 'hydraulic pressure gauge', number: 'HG-4', calibratedUntil: '2026-03-01' }];

let scene: CardsScene;
let keys: Record<string, SoftAuthenticator>;
/** The filter card before its leak check, and the start valve card before the tag is taken off. */
let leak: At;
let tag: At;

interface At {
  defect: string;
  work: string;
  step: string;
  result: object;
}

beforeAll(async () => {
  scene = await CardsScene.begin('2026-01-15T12:12:00.000Z', NAMES, { publicUrl: ORIGIN });
  keys = {};
  for (const name of ['odrin', 'wick', 'ressa', 'wenna', 'ulla']) keys[name] = await added(name);
  leak = { ...(await scene.started('Q-KEA')), step: 'leak-check', result: { result: 'begun', used } };
  await doSteps(scene.person('odrin'), leak.work, { defect: leak.defect, pass: scene.pass, until: leak.step });
  tag = await startValve('Q-KEA');
});

afterAll(() => scene.stop());

let before: number;
beforeEach(async () => {
  before = await scene.scene.count('signature');
});

async function added(name: string): Promise<SoftAuthenticator> {
  const client = scene.person(name);
  const { statement } = await client.get<Shapes['Passkeys']>('/api/passkeys');
  const made = new SoftAuthenticator(ORIGIN);
  const { body } = await client.post<Asked>('/api/passkeys/challenge', { secret: demoSecret(), statement });
  await client.post('/api/passkeys', { label: 'telephone', passkey: made.create(body) });
  return made;
}

async function startValve(on: string): Promise<At> {
  const odrin = scene.person('odrin');
  const { aircraft } = await odrin.get<Shapes['Fleet']>('/api/fleet');
  const item = { entry: '80-12-11', units: ['2'] };
  const written = await odrin.post<Shapes['ActDone']>('/api/defects', {
    aircraft: aircraft.find(({ registration }) => registration === on)?.id,
    origin: 'technician',
    description: 'The valve does not open.',
    recordedAt: scene.now(),
    item,
  });
  const defect = written.body.defect.id;
  await odrin.sign(defect, 'deferral', { act: 'defer', entry: '80-12-11', row: '1' }, { row: '1', item });
  await act(odrin, defect, 'cards', { card: 'start-valve-by-hand', procedure: '80-12-11/1/M2' });
  const { works } = await odrin.get<Shapes['CardsOfDefect']>(`/api/defects/${defect}/cards`);
  const work = works[0]?.id ?? '';
  await doSteps(odrin, work, { defect, pass: scene.pass, until: 'tag-off' });
  return { defect, work, step: 'tag-off', result: { result: 'in', count: 1, number: 'N-tag' } };
}

const shown = async ({ defect, work, step }: At, name = 'wick') =>
  (await secondSigns(scene.person('odrin'), { defect, work, step, person: scene.ids[name] })).statement;

interface Asking {
  at?: At;
  of?: string;
  statement?: string;
}

/** What the browser of whoever does the step is asked for. */
async function asked({ at = leak, of = 'wick', statement }: Asking = {}): Promise<Asked> {
  const { defect, work, step } = at;
  const body = { work, step, person: scene.ids[of], statement: statement ?? (await shown(at)) };
  return (await scene.person('odrin').post<Asked>(`/api/defects/${defect}/card-seconds`, body)).body;
}

const stepOf = ({ work, step, result }: At, second: object) => ({ work, step, ...result, second });

/** The step is tried with this answer of an authenticator, and nothing is signed by it. */
async function tried(passkey: object, { at = leak, of = 'wick', ...more }: Asking & { secret?: string } = {}) {
  const second = { person: scene.ids[of], statement: await shown(at), ...more, passkey };
  const answer = await refused(scene.person('odrin'), at.defect, 'card-steps', stepOf(at, second));
  expect(await scene.scene.count('signature')).toBe(before);
  return answer;
}

const refusedAsk = (person: string | undefined, more: object = {}) =>
  scene.person('odrin').refused('POST', `/api/defects/${leak.defect}/card-seconds`, {
    body: { work: leak.work, step: leak.step, person, statement: 'x', ...more },
  });

const key = (name: string): SoftAuthenticator => keys[name] ?? new SoftAuthenticator(ORIGIN);
const ofWick = (what: string) =>
  scene.person('ulla').post(`/api/people/${scene.ids['wick']}/${what}`, { reason: 'Badge lost.' });

describe('a passkey of a second person is asked for', () => {
  it('only of somebody else who works here, and only at a step that needs two', async () => {
    const codes = [];
    for (const name of ['odrin', 'kesh']) {
      const { code, errors } = await refusedAsk(scene.ids[name]);
      codes.push([code, errors?.[0]?.pointer]);
    }
    const step = await refusedAsk(scene.ids['wick'], { step: 'torque' });
    const work = await refusedAsk(scene.ids['wick'], { work: tag.work });
    expect([...codes, [step.code, step.errors?.[0]?.pointer], [work.code, work.errors?.[0]?.pointer]]).toEqual([
      ['invalid-input', '/person'],
      ['invalid-input', '/person'],
      ['invalid-input', '/step'],
      ['invalid-input', '/step'],
    ]);
  });

  it('and of somebody who holds one', async () => {
    const none = await refusedAsk(scene.ids['tamsel']);
    expect([none.code, none.detail]).toEqual([
      'passkey-wrong',
      expect.stringMatching(/^Tamsel \w+ has no passkey here, so nothing was asked for\.$/),
    ]);
  });

  it('not for an item of another operator', async () => {
    const body = { work: leak.work, step: leak.step, person: scene.ids['wick'], statement: 'x' };
    const at = `/api/defects/${leak.defect}/card-seconds`;
    expect((await scene.person('kesh').refused('POST', at, { body })).status).toBe(404);
  });
});

describe('a step is not begun by a passkey', () => {
  it.each<[string, Lies]>([
    ['given at another site', { origin: 'https://attacker.example' }],
    ['given for another name', { rpId: 'attacker.example' }],
    ['given without looking who holds it', { unverified: true }],
    ['over another challenge', { challenge: Buffer.alloc(32).toString('base64url') }],
  ])('%s', async (_, lies) => {
    expect((await tried(key('wick').get(await asked(), lies))).code).toBe('passkey-wrong');
  });

  it('of somebody else: of whoever does the step, of a third, of nobody', async () => {
    for (const name of ['odrin', 'ressa', 'nobody']) {
      const answer = await tried(key(name).get(await asked()));
      expect([answer.code, answer.detail]).toEqual([
        'passkey-wrong',
        'The passkey is not one of Wick Straddock, here and now.',
      ]);
    }
  });

  it('asked of another person', async () => {
    const answer = key('ressa').get(await asked({ of: 'ressa' }));
    expect((await tried(answer)).code).toBe('challenge-over');
  });

  it('asked for another step, for another card, or for other words', async () => {
    const statement = await shown(tag);
    const brief = key('wick').get(await asked({ at: { ...tag, step: 'brief' }, statement }));
    expect((await tried(brief, { at: tag })).code).toBe('challenge-over');
    const card = key('wick').get(await asked({ at: leak, statement }));
    expect((await tried(card, { at: tag })).code).toBe('challenge-over');
    const words = key('wick').get(await asked({ statement: 'I looked in later.' }));
    expect((await tried(words)).code).toBe('challenge-over');
    const otherwise = key('wick').get(await asked({ statement: 'I looked in later.' }));
    expect((await tried(otherwise, { statement: 'I looked in later.' })).code).toBe('statement-not-shown');
  });

  it('that was answered before, rightly or not', async () => {
    const ask = await asked();
    expect((await tried(key('wick').get(ask, { unverified: true }))).code).toBe('passkey-wrong');
    expect((await tried(key('wick').get(ask))).code).toBe('challenge-over');
  });

  it('five minutes after it was asked for', async () => {
    const answer = key('wick').get(await asked());
    scene.pass(5);
    expect((await tried(answer)).code).toBe('challenge-over');
  });

  it('in another session of the same person', async () => {
    const answer = key('wick').get(await asked());
    const elsewhere = await scene.scene.server.signIn('odrin');
    const second = { person: scene.ids['wick'], statement: await shown(leak), passkey: answer };
    const { code } = await refused(elsewhere, leak.defect, 'card-steps', stepOf(leak, second));
    expect(code).toBe('challenge-over');
  });

  it('that was asked for a signature of one who is signed in, nor the other way round', async () => {
    const statement = await shown(leak);
    const wick = scene.person('wick');
    const { body: own } = await wick.post<Asked>('/api/passkeys/signature', { statement });
    expect((await tried(key('wick').get(own))).code).toBe('challenge-over');
    const { statement: adds } = await wick.get<Shapes['Passkeys']>('/api/passkeys');
    const passkey = key('wick').get(await asked({ statement: adds }));
    const taken = await wick.refused('POST', '/api/passkeys/challenge', { body: { passkey, statement: adds } });
    expect(taken.code).toBe('challenge-over');
    const visitor = scene.scene.server.visitor();
    const signedIn = await visitor.refused('POST', '/api/session/passkey', { body: key('wick').get(await asked()) });
    expect(signedIn.code).toBe('challenge-over');
  });

  it('of the person of the session, who is no second person', async () => {
    const { body: own } = await scene
      .person('odrin')
      .post<Asked>('/api/passkeys/signature', { statement: await shown(leak) });
    expect((await tried(key('odrin').get(own), { of: 'odrin' })).code).toBe('second-person-same');
  });

  it('and a secret at once', async () => {
    const both = await tried(key('wick').get(await asked()), { secret: demoSecret() });
    expect([both.code, both.errors?.[0]?.pointer]).toEqual(['invalid-input', '/second']);
  });

  it('of somebody whose authorisation does not stand now', async () => {
    const codes = [];
    for (const of of ['wenna', 'ressa']) codes.push((await tried(key(of).get(await asked({ of })), { of })).code);
    expect(codes).toEqual(['no-authorisation', 'authorisation-does-not-cover']);
  });

  it('of somebody who was locked out meanwhile, and of whom none is asked for then', async () => {
    const answer = key('wick').get(await asked());
    await ofWick('lock');
    const locked = await tried(answer);
    expect([locked.code, locked.errors?.[0]?.pointer]).toEqual(['invalid-input', '/second/person']);
    const { code, errors } = await refusedAsk(scene.ids['wick']);
    expect([code, errors?.[0]?.pointer]).toEqual(['invalid-input', '/person']);
    await ofWick('unlock');
  });
});

describe('a passkey of a second person', () => {
  it('signs the step, and stands in the record with its form, the session and the passkey', async () => {
    const second = {
      person: scene.ids['wick'],
      statement: await shown(leak),
      passkey: key('wick').get(await asked()),
    };
    await act(scene.person('odrin'), leak.defect, 'card-steps', stepOf(leak, second));
    expect(await scene.scene.count('signature')).toBe(before + 1);
    const wick = await scene.scene.server.signIn('wick');
    const [{ id } = { id: '' }] = (await wick.get<Shapes['Passkeys']>('/api/passkeys')).passkeys;
    const { signatures } = await wick.get<Shapes['Signatures']>('/api/signatures');
    expect(signatures[0]).toMatchObject({ by: 'Wick Straddock', method: 'passkey', verifies: true, misfits: [] });
    expect(signatures[0]?.evidence).toMatch(new RegExp(`^session .* of another, passkey ${id}$`));
  });

  it('signs nobody in: the session of whoever does the step goes on', async () => {
    const session = await scene.person('odrin').get<Shapes['SessionView']>('/api/session');
    expect(session.person.id).toBe(scene.ids['odrin']);
  });

  it('signs once: the same answer is worth nothing at the next step that needs two', async () => {
    const passkey = key('wick').get(await asked({ at: tag }));
    const second = { person: scene.ids['wick'], statement: await shown(tag), passkey };
    await act(scene.person('odrin'), tag.defect, 'card-steps', stepOf(tag, second));
    const again = await startValve('Q-KEP');
    before = await scene.scene.count('signature');
    expect((await tried(passkey, { at: again, statement: await shown(again) })).code).toBe('challenge-over');
  });

  it('of somebody who left is worth nothing, though it was asked for before', async () => {
    const { defect, work } = await scene.started('Q-KEP');
    const at = { ...leak, defect, work };
    await doSteps(scene.person('odrin'), work, { defect, pass: scene.pass, until: at.step });
    const answer = key('wick').get(await asked({ at }));
    await ofWick('leaving');
    const second = { person: scene.ids['wick'], statement: 'x', passkey: answer };
    const { code, errors } = await refused(scene.person('odrin'), defect, 'card-steps', stepOf(at, second));
    expect([code, errors?.[0]?.pointer]).toEqual(['invalid-input', '/second/person']);
  });
});

it('asking is limited like signing in, by address', async () => {
  const slow = await runningServer({ demo: true, requestsPerMinute: 200 });
  try {
    const odrin = await slow.signIn('odrin');
    const at = '/api/defects/00000000-0000-4000-8000-000000000000/card-seconds';
    const codes = [];
    for (let tries = 0; tries < 11; tries += 1) codes.push((await odrin.refused('POST', at, { body: {} })).status);
    expect(codes.slice(0, 10)).not.toContain(429);
    expect(codes[10]).toBe(429);
  } finally {
    await slow.stop();
  }
});
