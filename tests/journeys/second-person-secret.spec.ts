/** Whose secret is looked at in the form of a step, and whose is not: nobody is tried there, and nobody locked signs. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Shapes } from '../support/api-client.js';
import { doSteps, secondSigns } from '../support/do-card.js';
import { act, CardsScene, refused } from './cards-scene.js';

let scene: CardsScene;
let defect: string;
let work: string;
const STEP = 'leak-check';
const used = [{ what: 'hydraulic pressure gauge', number: 'HG-4', calibratedUntil: '2026-03-01' }];

beforeAll(async () => {
  scene = await CardsScene.begin('2026-01-15T12:12:00.000Z', ['odrin', 'wick', 'ressa', 'wenna', 'ulla']);
  ({ defect, work } = await scene.started('Q-KEA'));
});

afterAll(() => scene.stop());

const signs = (name: string) =>
  secondSigns(scene.person('odrin'), { defect, work, step: STEP, person: scene.ids[name] });
const begins = (second: object, more: object = {}) => ({ work, step: STEP, result: 'begun', used, second, ...more });
const guess = { secret: 'what somebody thinks it is', statement: 'x' };
const guessed = async (by: string, more: object = {}) => {
  const answer = await refused(
    scene.person(by),
    defect,
    'card-steps',
    begins({ person: scene.ids['wick'], ...guess }, more),
  );
  return answer.code;
};
const offered = async () => {
  const view = await scene.person('odrin').get<Shapes['CardWorkView']>(`/api/defects/${defect}/cards/${work}`);
  return view.people.map(({ id }) => id);
};
const ofWick = (what: string) =>
  scene.person('ulla').post(`/api/people/${scene.ids['wick']}/${what}`, { reason: 'Badge lost.' });

describe('the secret of a second person', () => {
  it('is not tried at a step that needs none, is not due, or of no open work', async () => {
    const steps = (await scene.person('odrin').get<Shapes['CardWorkView']>(`/api/defects/${defect}/cards/${work}`))
      .work.steps;
    const alone = steps.find(
      ({ needs, kind }) => kind === 'do' && needs.every(({ kind: of }) => of !== 'second-person'),
    );
    const none = begins({ person: scene.ids['wick'], ...guess }, { step: alone?.id, result: 'done', used: [] });
    const answer = await refused(scene.person('odrin'), defect, 'card-steps', none);
    expect([answer.code, answer.errors]).toEqual([
      'invalid-input',
      [{ pointer: '/second', reason: 'is not asked for at this step' }],
    ]);
    expect(await guessed('odrin')).toBe('step-before-others');
    expect(await guessed('odrin', { work: '00000000-0000-4000-8000-000000000000' })).toBe('card-not-open');
  });

  it('is not tried by somebody who may not do the step, so that nobody locks a name by it', async () => {
    await doSteps(scene.person('odrin'), work, { defect, pass: scene.pass, until: STEP });
    for (let tries = 0; tries < 6; tries += 1) expect(await guessed('wenna')).toBe('no-authorisation');
    expect(await guessed('ressa')).toBe('authorisation-does-not-cover');
    expect(await guessed('odrin')).toBe('secret-wrong');
  });

  it('signs nothing for somebody who is locked out, and who is then not offered either', async () => {
    expect(await offered()).toContain(scene.ids['wick']);
    await ofWick('lock');
    expect(await offered()).not.toContain(scene.ids['wick']);
    const answer = await refused(scene.person('odrin'), defect, 'card-steps', begins(await signs('wick')));
    expect([answer.code, answer.errors]).toEqual([
      'invalid-input',
      [{ pointer: '/second/person', reason: 'is nobody who works for this operator now' }],
    ]);
    await ofWick('unlock');
    expect(await offered()).toContain(scene.ids['wick']);
  });
});

describe('a second person of whom the card asks for no privilege', () => {
  it('signs on any authorisation on this type, before a wider one on another', async () => {
    const { organisations } = await scene.person('ulla').get<Shapes['Members']>('/api/people');
    const asked = {
      number: 'QOF-L-991',
      organisation: organisations[0]?.id ?? '',
      aircraftTypes: 'Kellwing',
      licenceCategories: 'B1',
      privileges: 'write-up',
      validFrom: '2026-01-15T12:00:00.000Z',
      validUntil: '2027-01-15T12:00:00.000Z',
    };
    const wenna = scene.person('wenna');
    const at = `/api/people/${scene.ids['ressa']}`;
    const query = new URLSearchParams(asked).toString();
    const { statement } = await wenna.get<Shapes['Statement']>(`${at}/authorisation-statement?${query}`);
    await wenna.post(`${at}/authorisations`, { ...asked, sign: { secret: wenna.secret, statement } });
    await act(scene.person('odrin'), defect, 'card-steps', begins(await signs('ressa')));
    const { signatures } = await scene.person('ressa').get<Shapes['Signatures']>('/api/signatures');
    expect(signatures[0]).toMatchObject({ by: 'Ressa Tondry', authorisation: 'QOF-L-991', verifies: true });
  });
});
