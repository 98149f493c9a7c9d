/**
 * An extension as people see it: maintenance control asks, another person grants, the notice to the authority is owed,
 * overdue, sent and acknowledged. Rules: ORO.MLR.105(f) (SEEN), interval rows; invented item.
 */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Shapes } from '../support/api-client.js';
import { aSite, clockFrom, DESK, faults, NARROW, sign, type Site } from './site.js';

let clock = clockFrom('2026-11-25T09:00:00Z');
let site: Site;
let item: Shapes['DefectLine'];

beforeAll(async () => {
  site = await aSite({ now: () => clock() });
  const technician = await site.server.signIn('odrin');
  const { defects } = await technician.get<Shapes['DefectList']>('/api/defects');
  const on = defects.find(({ number }) => number === 'Q-KEC/1')?.aircraft;
  const written = {
    aircraft: on,
    origin: 'technician',
    description: 'Left landing light out.',
    recordedAt: clock(),
    item: { entry: '33-42-11', units: ['L'] },
  };
  const { body } = await technician.post<Shapes['ActDone']>('/api/defects', written);
  item = (await technician.sign(body.defect.id, 'deferral', { act: 'defer', row: '1' }, { row: '1' })).defect;
});

afterAll(() => site.stop());

const ask = (page: Page) => page.getByRole('button', { name: 'Ask for it' });

it('maintenance control is shown what it would give, and asks', async () => {
  const page = await site.as('brask', { viewport: NARROW });
  await page.goto(`/defects/${item.id}`);
  await page.getByRole('link', { name: 'Extend the interval' }).click();
  await page.getByText('Granted now it would end with').waitFor();
  expect(await page.getByText('15 Dec 2026', { exact: true }).count()).toBeGreaterThan(0);
  await page.getByLabel('Reason', { exact: true }).fill('The lamp is held at customs.');
  await page.getByLabel('Why it was not rectified in time').fill('None at any station.');
  await page.getByLabel('Plan to rectify it').fill('Arrives 8 December, fitted that night.');
  await ask(page).click();
  await page
    .getByRole('alert')
    .getByText(/outside/)
    .first()
    .waitFor();
  await page.getByLabel("The reason lies outside the operator's control").check();
  expect(await faults(page)).toEqual([]);
  await ask(page).click();
  await page.getByText('Not yours to grant').waitFor();
  expect(await page.getByRole('button', { name: /grant the extension/ }).count()).toBe(0);
  expect(await faults(page)).toEqual([]);
});

it('another authorised person reads the request and grants it by signature, once', async () => {
  const page = await site.as('sennet', { viewport: NARROW });
  await page.goto(`/defects/${item.id}/extension`);
  await page.getByText('The lamp is held at customs.').waitFor();
  await page.getByText(/I grant the extension of the interval/).waitFor();
  await sign(page, 'Sign: grant the extension');
  await page.getByText('May not be extended').waitFor();
  expect(await page.getByText(/ORO.MLR.105/).count()).toBeGreaterThan(0);
  expect(await page.locator('.state', { hasText: /^granted$/ }).count()).toBe(1);
  expect(await page.locator('.state.dashed', { hasText: /^Notice due$/ }).count()).toBe(1);
  expect(await ask(page).count()).toBe(0);
  expect(await faults(page)).toEqual([]);
});

it('a notice that is overdue stands out by word and by shape, until it is sent and acknowledged', async () => {
  clock = clockFrom('2026-12-26T09:00:00Z');
  const page = await site.as('sennet', { viewport: NARROW });
  await page.goto('/defects');
  await page.getByRole('link', { name: 'Extensions' }).click();
  await page.locator('.state.heavy', { hasText: 'Notice OVERDUE' }).waitFor();
  await page.getByText('1 notice to the authority').waitFor();
  expect(await faults(page)).toEqual([]);
  const printed = await page.getByRole('link', { name: 'The notice to print' }).getAttribute('href');
  const notice = await page.context().newPage();
  await notice.goto(printed ?? '');
  expect(await notice.getByText('The lamp is held at customs.').count()).toBe(1);
  await noted(page, 'sent', '08:30', 'letter 12');
  await page.locator('.state', { hasText: /^Notice sent$/ }).waitFor();
  expect(await page.getByText(/LATE: was due by/).count()).toBe(1);
  await noted(page, 'acknowledged', '08:45', 'inspector Q');
  await page.locator('.state.bare', { hasText: 'Notice acknowledged' }).waitFor();
  expect(await page.locator('.state.heavy').count()).toBe(0);
});

async function noted(page: Page, what: string, time: string, reference: string): Promise<void> {
  await page.getByText(`Note that it was ${what}`, { exact: true }).click();
  await page.getByLabel(`Date ${what}`).fill('2026-12-26');
  await page.getByLabel(`Time ${what}`).fill(time);
  await page.getByLabel('Reference').fill(reference);
  await page.getByRole('button', { name: `It was ${what}` }).click();
}

it('what the authority allows beyond it is entered as its document, shown as such, and moves no deadline', async () => {
  const page = await site.as('odrin', { viewport: DESK });
  await page.goto(`/defects/${item.id}/extension`);
  await page.getByRole('link', { name: 'Enter what an authority allows' }).click();
  await page.getByLabel('Its number').fill('PF-12');
  await page.getByLabel('Which authority').fill('Authority of the state of registry');
  await page.getByLabel('Its limit, in its own terms').fill('one flight to the base');
  await page.getByLabel('Date from which it is good').fill('2026-12-26');
  await page.getByLabel('Time from which it is good').fill('0000');
  await page.getByLabel('Date at which it ends').fill('2026-12-29');
  await page.getByLabel('Time at which it ends').fill('0000');
  await page.getByLabel('How many flights').fill('1');
  await page.getByLabel('Ferry flights alone').check();
  expect(await faults(page)).toEqual([]);
  await sign(page, 'Sign: entered as it reads');
  await page.locator('.state.double', { hasText: 'permit PF-12' }).waitFor();
  await page.getByText(/Entered by Odrin Vask .* It moves no deadline/).waitFor();
  const { defect } = await (await site.server.signIn('sennet')).get<Shapes['DefectView']>(`/api/defects/${item.id}`);
  expect(defect.deadline?.lastDay).toBe('2026-12-15');
});
