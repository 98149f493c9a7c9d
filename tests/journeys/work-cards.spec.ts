/**
 * Work cards through the interface: libraries that are loaded or refused, tools that are missed, a
 * card that is stopped half-worked and stated in the release, a one-off authorisation for one job. The browser journey
 * beside it does two cards as a technician would.
 */
import { readFileSync } from 'node:fs';
import { parse, stringify } from 'yaml';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { CardLibraryContent } from '#mel';
import type { Shapes } from '../support/api-client.js';
import { doSteps } from '../support/do-card.js';
import { act, CardsScene, refused } from './cards-scene.js';
import { WORK } from './signatures-scene.js';

let scene: CardsScene;
const ids: Record<string, string> = {};

beforeAll(async () => {
  const names = ['odrin', 'tamsel', 'wick', 'ressa', 'mabbet', 'sennet', 'wenna', 'kesh'];
  scene = await CardsScene.begin('2026-01-15T12:12:00.000Z', names);
  Object.assign(ids, scene.ids);
});

afterAll(() => scene.stop());

const library = (): CardLibraryContent =>
  parse(readFileSync(new URL('../../seed/cards.yaml', import.meta.url), 'utf8')) as CardLibraryContent;

describe('a library of cards', () => {
  const load = (by: string, content: CardLibraryContent) =>
    scene.person(by).refused('POST', '/api/cards', { body: { file: 'cards.yaml', text: stringify(content) } });

  it('is refused whole where a card is offered for an entry that the MEL has not, with file, card, place and reason', async () => {
    const content = { ...library(), revision: '4' };
    content.cards[0]!.entries = ['29-13-12'];
    const refusal = await load('mabbet', content);
    expect(refusal).toMatchObject({ status: 422, code: 'invalid-input' });
    expect(refusal.detail).toBe(
      'cards.yaml: 1 error(s); the first: card case-drain-filter, /cards/0/entries/0: there is no entry "29-13-12" in the MEL',
    );
    expect(refusal.errors).toEqual([
      {
        pointer: '/cards/0/entries/0',
        reason: 'there is no entry "29-13-12" in the MEL',
        card: 'case-drain-filter',
      },
    ]);
  });

  it('is refused where a tool is needed and not counted, with its step', async () => {
    const content = { ...library(), revision: '4' };
    const torque = content.cards[0]!.steps.find(({ id }) => id === 'torque');
    torque!.needs = [{ kind: 'tool', what: 'torque wrench' }];
    expect((await load('mabbet', content)).errors).toEqual([
      {
        pointer: '/cards/0/steps/10/needs/0/account',
        reason: 'is missing: "torque wrench" is a tool, so an account issues and returns it',
        card: 'case-drain-filter',
        step: 'torque',
      },
    ]);
  });

  it('comes into force at once, and the one before stays listed', async () => {
    const text = stringify({ ...library(), revision: '4' });
    expect((await scene.person('odrin').refused('POST', '/api/cards', { body: { file: 'c', text } })).code).toBe(
      'role-missing',
    );
    await scene.person('mabbet').post('/api/cards', { file: 'cards.yaml', text });
    const { libraries } = await scene.person('odrin').get<Shapes['CardList']>('/api/cards');
    const ofType = libraries.filter(({ aircraftType }) => aircraftType === 'Kellwing');
    expect(ofType.map(({ revision, inForce }) => [revision, inForce])).toEqual([
      ['4', true],
      ['3', false],
    ]);
  });
});

describe('a tool that is issued', () => {
  it('is missed by the general verification and by the aircraft until it is returned', async () => {
    const { defect, work } = await scene.started('Q-KEC');
    const odrin = scene.person('odrin');
    await scene.scene.rectify('odrin', defect, { complete: false });
    await doSteps(odrin, work, { defect, pass: scene.pass, until: 'torque' });
    const early = await odrin.signRefused(defect, 'card-signatures', { act: 'card', work }, { work });
    expect([early.code, early.detail]).toEqual([
      'card-not-finished',
      'Work card "Case-drain filter of the electric hydraulic pump changed" is not finished: still pulled: pump breaker with its collar at main equipment bay, panel P3, B1 (N-breaker); still fitted: DO NOT PRESSURISE placard at flight deck, hydraulic panel (N-placard); still open: access panel 197 of the pump bay at right wing root (N-panel); still unlatched: 6 latches of panel 197 at right wing root; still issued: torque wrench at right wing root (N-wrench); not done: step 11 "Tighten the bowl and read the torque"; not done: step 13 "Wipe the bay dry; nothing is left in it"; not done: step 15 "Run the pump on the ground and watch bowl and lines"; not done: step 16 "Switch the pump OFF and see pressure at zero"; not done: step 17 "A second person sees element, seals and bowl: locked, tight, dry"; not done: step 21 "Read the hydraulic quantity".',
    ]);
    const seen = { toolsAccounted: true, panelsClosed: true, registerChecked: true };
    const refusal = await odrin.signRefused(defect, 'verification', { act: 'verify' }, seen);
    expect(refusal.code).toBe('tools-not-returned');
    expect(refusal.detail).toContain('(N-wrench)');
    const { aircraft } = (await odrin.get<Shapes['DefectView']>(`/api/defects/${defect}`)).defect;
    const register = await odrin.get<Shapes['RegisterView']>(`/api/aircraft/${aircraft}/left`);
    expect(register.openWork.join()).toContain('not returned: tool at right wing root (N-wrench)');
  });
});

describe('a card that is stopped half-worked', () => {
  let defect: string;
  let work: string;
  const query = () => ({ act: 'card-stop', work });
  const reason = 'No seals in the store.';

  it('stands in what a shift hands over, with its next step', async () => {
    ({ defect, work } = await scene.started('Q-KED', 'tamsel'));
    await act(scene.person('tamsel'), defect, 'card-steps', { work, step: 'zero', result: 'done' });
    const { aircraft } = (await scene.person('odrin').get<Shapes['DefectView']>(`/api/defects/${defect}`)).defect;
    const register = await scene.person('odrin').get<Shapes['RegisterView']>(`/api/aircraft/${aircraft}/left`);
    expect(register.open.join()).toContain(
      'card "Case-drain filter of the electric hydraulic pump changed" begun: 1 of 21 steps done, next: step 2 "Pull and collar the pump breaker"',
    );
  });

  it('is not stopped while something of it is out, and is gone on with by another', async () => {
    const wick = scene.person('wick');
    await act(wick, defect, 'card-steps', { work, step: 'pull', result: 'out', number: 'C-1' });
    const stop = await wick.signRefused(defect, 'card-stops', query(), { work, reason });
    expect(stop.code).toBe('card-leaves-things');
    expect(stop.detail).toContain('still pulled: pump breaker with its collar');
  });

  it('is stated in the release as what is not complete, and does not close the item', async () => {
    const other = await scene.started('Q-KEB', 'tamsel');
    await act(scene.person('tamsel'), other.defect, 'card-steps', { work: other.work, step: 'zero', result: 'done' });
    const odrin = scene.person('odrin');
    await odrin.sign(
      other.defect,
      'card-stops',
      { act: 'card-stop', work: other.work },
      { work: other.work, reason },
    );
    const view = await odrin.get<Shapes['DefectView']>(`/api/defects/${other.defect}`);
    expect(view.openWork).toMatchObject({ complete: false, performers: ['Odrin Vask', 'Tamsel Quorry'] });
    const [line = ''] = view.openWork?.stopped ?? [];
    expect(line).toMatch(
      /^Work card stopped: Case-drain filter .* \(No seals in the store\.\)\. Not done: step 2 "Pull and collar the pump breaker"; /,
    );
    const verified = { toolsAccounted: true, panelsClosed: true, registerChecked: true };
    const out = { outcome: 'stays-open', verified };
    const short = await odrin.signRefused(
      ...([other.defect, 'release'] as const),
      { act: 'release', staysOpen: 'the seals' },
      { ...out, staysOpen: ['the seals'] },
    );
    expect(short.code).toBe('stopped-card-not-said');
    const closed = await odrin.signRefused(
      other.defect,
      'release',
      { act: 'release' },
      { outcome: 'closed', verified },
    );
    expect(closed.code).toBe('work-not-complete');
    const done = await odrin.sign(
      ...([other.defect, 'release'] as const),
      { act: 'release', staysOpen: line },
      { ...out, staysOpen: [line] },
    );
    expect(done.signed?.statement).toContain(`Not complete, and stays open: ${line}.`);
  });
});

describe('a one-off authorisation on a card', () => {
  it('stands for the steps and the signature of its job, and then no more', async () => {
    const { defect } = await scene.started('Q-KEP');
    const ressa = scene.person('ressa');
    const start = { card: 'static-covers' };
    expect((await refused(ressa, defect, 'cards', start)).code).toBe('authorisation-does-not-cover');
    const until = new Date(Date.parse(scene.now()) + 6 * 3_600_000).toISOString();
    const scope = { defect, privilege: 'sign-procedure', validUntil: until, because: 'nobody else is here' };
    const asked = `/api/people/${ids['ressa']}/one-off-statement?${new URLSearchParams(scope).toString()}`;
    const wenna = scene.person('wenna');
    const { statement } = await wenna.get<Shapes['Statement']>(asked);
    await wenna.post(`/api/people/${ids['ressa']}/one-off`, { ...scope, sign: { secret: wenna.secret, statement } });
    await act(ressa, defect, 'cards', start);
    const { works } = await ressa.get<Shapes['CardsOfDefect']>(`/api/defects/${defect}/cards`);
    const work = works.find(({ card }) => card === 'static-covers')?.id ?? '';
    await doSteps(ressa, work, { defect, pass: scene.pass, second: scene.person('wick') });
    await ressa.sign(defect, 'card-signatures', { act: 'card', work }, { work });
    expect(await scene.scene.newest('ressa')).toMatchObject({ authorisation: expect.stringContaining('one-off') });
    expect((await refused(ressa, defect, 'cards', start)).code).toBe('authorisation-does-not-cover');
    expect((await ressa.signRefused(defect, 'rectification', { act: 'rectify' }, WORK)).code).toBe(
      'authorisation-does-not-cover',
    );
  });
});
