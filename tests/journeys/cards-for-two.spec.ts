/**
 * What a step of a work card needs, through the interface: a second person who signs on the device of whoever does the
 * step, and equipment by its number and calibration. 145.A.40; 145.A.47 (from memory).
 */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { run } from '../../apps/cli/src/run.js';
import type { Compared } from '../../apps/server/src/index.js';
import type { Shapes } from '../support/api-client.js';
import { doSteps, secondSigns } from '../support/do-card.js';
import { act, CardsScene, refused } from './cards-scene.js';

let scene: CardsScene;

beforeAll(async () => {
  const names = ['odrin', 'tamsel', 'wick', 'ressa', 'wenna', 'kesh'];
  scene = await CardsScene.begin('2026-01-15T12:12:00.000Z', names);
});

afterAll(() => scene.stop());

describe('a step that needs two people', () => {
  let defect: string;
  let work: string;
  const used = [{ what: 'hydraulic pressure gauge', number: 'HG-4', calibratedUntil: '2026-01-15' }];
  const leak = (second?: object) => ({ work, step: 'leak-check', result: 'begun', used, ...(second && { second }) });
  const signs = (name: string) =>
    secondSigns(scene.person('odrin'), { defect, work, step: 'leak-check', person: scene.ids[name] });
  const begin = (second?: object) => refused(scene.person('odrin'), defect, 'card-steps', leak(second));

  it('asks who is there: somebody else who works for this operator', async () => {
    ({ defect, work } = await scene.started('Q-KEA'));
    const view = await scene.person('odrin').get<Shapes['CardWorkView']>(`/api/defects/${defect}/cards/${work}`);
    expect(view.people.map(({ id }) => id)).toContain(scene.ids['tamsel']);
    expect(view.people.map(({ id }) => id)).not.toContain(scene.ids['kesh']);
    await doSteps(scene.person('odrin'), work, { defect, pass: scene.pass, until: 'leak-check' });
    const alone = await begin();
    expect([alone.code, alone.detail]).toEqual([
      'second-person-missing',
      'Step 15 "Run the pump on the ground and watch bowl and lines" needs a second person (somebody at the pump switch on the headset), and Odrin Vask names nobody.',
    ]);
    const nobody = { ...(await signs('wick')), person: '00000000-0000-4000-8000-000000000000' };
    const codes = [];
    for (const second of [await signs('odrin'), await signs('kesh'), nobody]) codes.push((await begin(second)).code);
    expect(codes).toEqual(['second-person-same', 'invalid-input', 'invalid-input']);
  });

  it('is not begun on the word of whoever does it: the one named signs, on the same device', async () => {
    const { person, statement } = await signs('wick');
    expect(statement).toBe(
      'I am the second person at step 15 "Run the pump on the ground and watch bowl and lines." (somebody at the pump switch on the headset) of work card "Case-drain filter of the electric hydraulic pump changed" for defect Q-KEA/2 on Q-KEA. I am there myself and do my part of it; somebody else does the step.',
    );
    const named = await begin({ person });
    expect([named.status, named.code, named['next']]).toEqual([
      403,
      'second-person-unsigned',
      'Have Wick Straddock read what is certified and enter their own secret in the form of this step.',
    ]);
    const guessed = await begin({ person, statement, secret: 'what Odrin thinks it is' });
    expect([guessed.code, guessed.errors]).toEqual([
      'secret-wrong',
      [{ pointer: '/second/secret', reason: 'is not the secret of Wick Straddock' }],
    ]);
    const otherwise = await begin({ ...(await signs('wick')), statement: 'I looked in later.' });
    expect([otherwise.code, otherwise['statement']]).toEqual(['statement-not-shown', statement]);
  });

  it('is not begun with somebody whose authorisation does not stand now', async () => {
    const codes = [];
    for (const name of ['wenna', 'ressa']) codes.push((await begin(await signs(name))).code);
    expect(codes).toEqual(['no-authorisation', 'authorisation-does-not-cover']);
  });

  it('tells nothing and opens nothing: the session of whoever does the step goes on, and no other begins', async () => {
    await act(scene.person('odrin'), defect, 'card-steps', leak(await signs('wick')));
    const session = await scene.person('odrin').get<Shapes['SessionView']>('/api/session');
    expect(session.person.id).toBe(scene.ids['odrin']);
    const { history } = await scene.person('odrin').get<Shapes['DefectView']>(`/api/defects/${defect}`);
    expect(history.at(-1)?.words).toBe(
      'Step 15 "Run the pump on the ground and watch bowl and lines.": begun, to last 5 min, with Wick Straddock, who signed, by hydraulic pressure gauge HG-4, calibrated until 2026-01-15',
    );
  });

  it('keeps the signature of the second person bound to the record entry of the step', async () => {
    const { signatures } = await scene.person('wick').get<Shapes['Signatures']>('/api/signatures');
    expect(signatures[0]).toMatchObject({
      by: 'Wick Straddock',
      what: 'defect.card-stepped',
      method: 'password',
      verifies: true,
      misfits: [],
    });
    expect(signatures[0]?.evidence).toMatch(/^session .* of another, own secret$/);
  });

  it('is not inspected by the second person', async () => {
    const readings = [
      { id: 'pressure', value: 3000, unit: 'psi' },
      { id: 'case', value: 80, unit: 'C' },
    ];
    const ran = { work, step: 'leak-check', result: 'ran', readings };
    const short = await refused(scene.person('odrin'), defect, 'card-steps', ran);
    expect(short.code).toBe('wait-cut-short');
    expect(short.detail).toMatch(
      /^Step 15 "Run the pump on the ground and watch bowl and lines" began at \S+ and lasts 5 minutes: it is cut short by /,
    );
    scene.pass(5);
    await act(scene.person('odrin'), defect, 'card-steps', ran);
    await act(scene.person('odrin'), defect, 'card-steps', {
      work,
      step: 'leak-check',
      result: 'looked',
      findings: 'dry',
    });
    const { history } = await scene.person('odrin').get<Shapes['DefectView']>(`/api/defects/${defect}`);
    expect(history.at(-2)?.words).toBe(
      'Step 15 "Run the pump on the ground and watch bowl and lines.": ran its whole time: system pressure 3000 psi, case temperature 80 C',
    );
    await act(scene.person('odrin'), defect, 'card-steps', { work, step: 'shut-down', result: 'done' });
    const looked = { work, step: 'second-look', findings: 'tight' };
    const query = { act: 'card-inspection', work };
    const own = await scene.person('wick').signRefused(defect, 'card-inspections', query, looked);
    expect(own.code).toBe('inspector-did-it');
    expect(own.detail).toBe(
      'Wick Straddock had a hand in step 15 "Run the pump on the ground and watch bowl and lines" and cannot inspect it in step 17 "A second person sees element, seals and bowl: locked, tight, dry".',
    );
  });
});

describe('the record', () => {
  it('tells the signatures of second persons as the tables hold them', async () => {
    const asked = ['--database', scene.scene.server.ownerUrl, '--json'];
    const waiting = async (): Promise<number> => {
      const { stdout } = await run(['record', 'verify', ...asked]);
      return (JSON.parse(stdout) as { operators: { waiting: number }[] }).operators.reduce(
        (sum, one) => sum + one.waiting,
        0,
      );
    };
    await expect.poll(waiting, { timeout: 30_000 }).toBe(0);
    const { stdout } = await run(['record', 'compare', ...asked]);
    const { operators } = JSON.parse(stdout) as { operators: Compared[] };
    expect(operators.flatMap(({ differences }) => differences)).toEqual([]);
  });
});

describe('equipment that a step uses', () => {
  let defect: string;
  let work: string;
  const bowl = { result: 'measured', value: 26, unit: 'Nm' };
  const wrench = (number: string, calibratedUntil: string) => ({
    work,
    step: 'torque',
    ...bowl,
    used: [{ what: 'torque wrench, 10 to 50 Nm', number, calibratedUntil }],
  });

  it('is stated before the step is done: which one, and until when it is calibrated', async () => {
    ({ defect, work } = await scene.started('Q-KEO'));
    const odrin = scene.person('odrin');
    await doSteps(odrin, work, { defect, pass: scene.pass, until: 'torque' });
    const none = await refused(odrin, defect, 'card-steps', { work, step: 'torque', ...bowl });
    expect([none.status, none.code, none['next']]).toEqual([
      422,
      'equipment-not-stated',
      'Read it from the equipment and enter it: its number, and until when it is calibrated.',
    ]);
    expect((await refused(odrin, defect, 'card-steps', wrench('TW-9', '2026-06-01'))).code).toBe('tool-not-issued');
    const past = await refused(odrin, defect, 'card-steps', wrench('N-wrench', '2026-01-14'));
    expect([past.status, past.code]).toEqual([409, 'equipment-out-of-calibration']);
    expect((await refused(odrin, defect, 'card-steps', wrench('N-wrench', '2026-02-30'))).code).toBe('invalid-input');
    await act(odrin, defect, 'card-steps', wrench('N-wrench', '2026-06-01'));
  });

  it('is shown on the card, and the gauge that the operator used last is offered', async () => {
    const path = `/api/defects/${defect}/cards/${work}`;
    const { steps } = (await scene.person('odrin').get<Shapes['CardWorkView']>(path)).work;
    const step = (id: string) => steps.find((one) => one.id === id);
    expect(step('torque')?.done?.used).toEqual(['torque wrench, 10 to 50 Nm N-wrench, calibrated until 2026-06-01']);
    const gauge = step('leak-check')?.needs.find(({ kind }) => kind === 'equipment');
    expect(gauge).toMatchObject({ stated: true, calibrated: true, last: { number: 'HG-4' } });
  });
});

describe('a gauge whose calibration has run out', () => {
  it('is no longer offered', async () => {
    const { defect, work } = await scene.started('Q-KEP');
    scene.pass(24 * 60);
    const odrin = await scene.scene.server.signIn('odrin');
    const { steps } = (await odrin.get<Shapes['CardWorkView']>(`/api/defects/${defect}/cards/${work}`)).work;
    const leak = steps.find(({ id }) => id === 'leak-check');
    expect(leak?.needs.map(({ last }) => last)).toEqual([null, null]);
  });
});
