/** An account is made, its owner chooses a secret of their own, quality grants the scope; access is locked and opened. */
import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { aSite, clockFrom, DESK, faults, missing, sign, type Site } from './site.js';

const OWN = 'quiet harbour under nine lamps';
let site: Site;
let office: Page;
let first: string;

beforeAll(async () => {
  site = await aSite({ now: clockFrom('2026-11-25T09:00:00Z') });
  office = await site.as('ulla', { viewport: DESK });
});

afterAll(() => site.stop());

async function accountOn(page: Page): Promise<Locator> {
  await page.goto('/people');
  const card = page.locator('li.card', { has: page.getByRole('heading', { name: 'Perrin Oskelund' }) });
  await card.getByText('Change the account of Perrin Oskelund').click();
  return card;
}

async function signIn(secret: string): Promise<Page> {
  const page = await site.visitor();
  await page.getByLabel('Sign-in name').fill('perrin');
  await page.getByLabel('Secret').fill(secret);
  await page.getByRole('button', { name: 'Sign in' }).click();
  return page;
}

it('an administrator makes the account, and sees its first secret this once', async () => {
  await office.getByText('Make an account').click();
  await office.getByLabel('Name', { exact: true }).fill('Perrin Oskelund');
  await office.getByLabel('Sign-in name').fill('perrin');
  await office.getByLabel('Organisation').selectOption({ index: 1 });
  expect(await office.getByRole('button', { name: 'Make the account' }).isDisabled()).toBe(true);
  await office.getByLabel('technician').first().check();
  expect(await faults(office)).toEqual([]);
  await office.getByRole('button', { name: 'Make the account' }).click();
  const box = office.locator('.done-box');
  expect(await missing(box, 'The first secret of Perrin Oskelund, shown this once:')).toEqual([]);
  first = (await box.locator('.registration').innerText()).trim();
  await office.reload();
  expect(await missing(office, 'Perrin Oskelund')).toEqual([]);
  expect(await office.getByText(first).count()).toBe(0);
});

it('its owner chooses a secret of their own before anything else is shown', async () => {
  const page = await signIn(first);
  await page.getByRole('heading', { level: 1, name: 'Choose a secret of your own' }).waitFor();
  expect(await page.getByRole('navigation').count()).toBe(0);
  await page.getByLabel('The first secret').fill(first);
  await page.getByLabel('The new one').fill(OWN);
  expect(await faults(page)).toEqual([]);
  await page.getByRole('button', { name: 'Change my secret' }).click();
  await page.getByRole('heading', { name: 'Which aircraft?' }).waitFor();
});

it('quality grants an authorisation with what it covers, signed', async () => {
  const quality = await site.as('wenna', { viewport: DESK });
  const card = await accountOn(quality);
  await card.getByText('Grant Perrin Oskelund an authorisation').click();
  await card.getByLabel('Its number').fill('QOF-L-990');
  await card.getByLabel('Organisation').selectOption({ index: 1 });
  await card.getByLabel('Kellwing').check();
  await card.getByLabel('B1').check();
  await card.getByLabel('defer').check();
  await card.getByText(/authorisation QOF-L-990 of .+ on Kellwing, licence category B1: defer/).waitFor();
  expect(await faults(quality)).toEqual([]);
  await sign(quality, 'Sign: authorise Perrin Oskelund');
  expect(await missing(card, 'QOF-L-990')).toEqual([]);
});

it('a locked account says so, and lets its owner in again once it is unlocked', async () => {
  const card = await accountOn(office);
  await card.locator('summary', { hasText: 'Lock the access' }).click();
  await card.getByLabel('Why, for the record').locator('visible=true').fill('Badge lost.');
  await card.getByRole('button', { name: 'Lock the access of Perrin Oskelund' }).click();
  expect(await missing(card, /^Access locked since/)).toEqual([]);
  const out = await signIn(OWN);
  await out.getByRole('heading', { name: 'For which operator?' }).waitFor();
  await card.locator('summary', { hasText: 'Unlock the access' }).click();
  await card.getByLabel('Why, for the record').locator('visible=true').fill('Badge found.');
  await card.getByRole('button', { name: 'Unlock the access of Perrin Oskelund' }).click();
  await card.getByText(/^Access locked since/).waitFor({ state: 'detached' });
  await (await signIn(OWN)).getByRole('heading', { name: 'Which aircraft?' }).waitFor();
});
