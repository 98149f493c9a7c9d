/**
 * A technician names the wrong side and mistypes a serial number, and says so in an act of its own; the first words stay,
 * struck. What decides something waits for an inspector, who sees both (145.A.48; published requirement E-09).
 */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { aSite, clockFrom, faults, missing, said, sign, type Site } from './site.js';

let site: Site;
let tech: ApiClient;
let gate: Page;
let item: string;
const ITEM = { item: { entry: '33-42-11', units: ['L'] }, row: '1' };

beforeAll(async () => {
  site = await aSite({ now: clockFrom('2026-11-25T09:00:00Z') });
  tech = await site.server.signIn('odrin');
  const { aircraft } = await tech.get<Shapes['Fleet']>('/api/fleet');
  const { body } = await tech.post<Shapes['ActDone']>('/api/defects', {
    aircraft: aircraft.find(({ registration }) => registration === 'Q-KEC')?.id,
    origin: 'technician',
    description: 'Logo light out.',
    recordedAt: '2026-11-25T09:00:00Z',
    item: ITEM.item,
  });
  item = body.defect.id;
  await tech.sign(item, 'deferral', { act: 'defer', entry: '33-42-11', row: '1' }, ITEM);
  gate = await site.as('odrin');
});

afterAll(() => site.stop());

/** The number of the newest line of a kind in the history. */
async function entryOf(act: string): Promise<number> {
  const { history } = await tech.get<Shapes['DefectView']>(`/api/defects/${item}`);
  return history.findLast((line) => line.act === act)?.seq ?? 0;
}

it('the side is mistyped: it is said, and waits', async () => {
  await gate.goto(`/defects/${item}`);
  await gate.getByRole('link', { name: `Correct this entry, number ${await entryOf('deferred')}` }).click();
  await gate.getByLabel('The unit: L').check();
  await gate.getByText('It decides something.').waitFor();
  await gate.getByLabel('It should read').fill('R');
  await gate.getByLabel('Why it is corrected').fill('Looked from in front.');
  await gate.getByText('the unit reads "R" in place of "L"').waitFor();
  expect(await faults(gate)).toEqual([]);
  await sign(gate, 'Sign: it is mistyped');
  await said(gate).getByText('until another person has looked').waitFor();
  expect(await missing(gate.locator('main'), 'Waits for a second look', 'The aircraft does not leave')).toEqual([]);
  expect(await faults(gate)).toEqual([]);
});

it('the inspector looks, and sees what was written and what it reads now', async () => {
  const inspector = await site.as('wick');
  await inspector.goto(`/defects/${item}`);
  await inspector.getByRole('link', { name: 'I looked' }).click();
  await inspector.getByText('Look at the aircraft itself').waitFor();
  expect(await faults(inspector)).toEqual([]);
  await sign(inspector, 'Sign: I looked, it is right');
  await inspector.getByRole('heading', { name: 'History' }).waitFor();
  const history = inspector.locator('.history');
  expect(await history.locator('s').allTextContents()).toEqual(['unit L', 'L']);
  expect(await history.locator('ins').allTextContents()).toContain('R');
  const told = [
    'Corrected, the unit:',
    'looked at by Wick Straddock',
    'as Odrin Vask asked',
    'Looked from in front.',
  ];
  expect(await missing(history, ...told)).toEqual([]);
  expect(await faults(inspector)).toEqual([]);
});

it('a serial number is put right with one signature, and what decides is shown with what to do instead', async () => {
  const work = { workDone: 'Lamp changed', reference: 'AMM 33-42 rev 4', complete: true, partNumber: 'PN-778' };
  const asked = { serialOn: 'S-100', testAsked: false, inspectionAsked: false };
  await tech.sign(item, 'rectification', { act: 'rectify' }, { ...work, ...asked });
  const { history } = await tech.get<Shapes['DefectView']>(`/api/defects/${item}`);
  await gate.goto(`/defects/${item}/correction?of=${history.at(-1)?.id}`);
  await gate.getByRole('heading', { name: 'Put right otherwise' }).waitFor();
  await gate.getByText('Enter the work again as it was done').first().waitFor();
  await gate.getByLabel('The serial number fitted: S-100').check();
  await gate.getByLabel('It should read').fill('S-101');
  await gate.getByLabel('Why it is corrected').fill('Misread.');
  expect(await faults(gate)).toEqual([]);
  await sign(gate, 'Sign: corrected');
  await gate.getByRole('heading', { name: 'History' }).waitFor();
  await gate.locator('.history s', { hasText: 'S-100' }).first().waitFor();
  await gate.locator('.history ins', { hasText: 'S-101' }).waitFor();
});

it('the status sheet says it too', async () => {
  const { defect } = await tech.get<Shapes['DefectView']>(`/api/defects/${item}`);
  await gate.goto(`/aircraft/${defect.aircraft}/status-sheet`);
  await gate.getByRole('heading', { name: 'Open items' }).waitFor();
  const told = ['Corrected, the unit:', 'Corrected, the serial number fitted:'];
  expect(await missing(gate.locator('main'), ...told)).toEqual([]);
  expect(await gate.locator('main s').allTextContents()).toEqual(['L', 'S-100']);
  expect(await faults(gate)).toEqual([]);
});

it('the inspector finds the first words right, and signs that they stay', async () => {
  const { history } = await tech.get<Shapes['DefectView']>(`/api/defects/${item}`);
  const of = history.find(({ act }) => act === 'deferred')?.id ?? '';
  const said = { of, field: 'unit', now: 'L' };
  await tech.sign(item, 'correction', { act: 'correct', ...said }, { ...said, reason: 'Looked from behind.' });
  const inspector = await site.as('wick');
  await inspector.goto(`/defects/${item}`);
  await inspector.getByRole('link', { name: 'It stays as written' }).click();
  await inspector.getByLabel('Why it stays as written').fill('The right one is dark.');
  await inspector.getByText('is as it is written:').waitFor();
  expect(await faults(inspector)).toEqual([]);
  await sign(inspector, 'Sign: it stays as written');
  await inspector.getByRole('heading', { name: 'History' }).waitFor();
  await inspector.locator('.history').getByText('Stays as written, the unit, not "L" in place of "R"').waitFor();
  expect(await inspector.getByText('Waits for a second look').count()).toBe(0);
});

it('what is left under a document stays as written: whoever asked takes the correction back on its page', async () => {
  const { defect } = await tech.get<Shapes['DefectView']>(`/api/defects/${item}`);
  const at = (path: string): string => `/api/aircraft/${defect.aircraft}/left${path}`;
  async function act(address: string, of: string, body: object): Promise<void> {
    const { etag } = await tech.send('GET', at(''));
    const { statement } = await tech.get<Shapes['Statement']>(at(`/statement?act=${of}`));
    await tech.post(
      at(`/${address}`),
      { ...body, sign: { secret: tech.secret, statement } },
      { ifMatch: etag ?? '' },
    );
  }
  const pin = { kind: 'lock-pin', where: 'gear 2', tag: 'PIN-70', undo: 'Pull it out.' };
  await act('fitted', 'fitted', { items: [pin], owner: { kind: 'modification', reference: 'MOD 27-114' } });
  const { left } = await tech.get<Shapes['RegisterView']>(at(''));
  const thing = left.find(({ tag }) => tag === 'PIN-70')?.id;
  await act('corrections', 'correction', { item: thing, field: 'where', now: 'gear 3', reason: 'Miscounted.' });
  const inspector = await site.as('wick');
  await inspector.goto(`/aircraft/${defect.aircraft}/left`);
  await inspector.getByRole('link', { name: 'It stays as written' }).click();
  await inspector.getByText(/^I looked at .* is as the register says: “gear 2”/).waitFor();
  expect(await faults(inspector)).toEqual([]);
  await gate.goto(`/aircraft/${defect.aircraft}/left`);
  expect(await faults(gate)).toEqual([]);
  await gate.getByRole('link', { name: 'It stays as written' }).click();
  await gate.getByText(/^I asked that .* should read “gear 3”, and take it back/).waitFor();
  await gate.getByLabel('Why it stays as written').fill('Gear 2 after all.');
  expect(await faults(gate)).toEqual([]);
  await sign(gate, 'Sign: I take it back');
  await gate.getByText('It stays as it was written.').first().waitFor();
  expect(await gate.getByText('Waiting for a second look').count()).toBe(0);
});
