/** What the operator settles, as quality reads it and changes it. */
import { afterAll, beforeAll, expect, it } from 'vitest';
import { aSite, clockFrom, faults, NARROW, secret, type Site } from './site.js';

let site: Site;

beforeAll(async () => {
  site = await aSite({ now: clockFrom('2026-11-25T09:00:00Z') });
});

afterAll(() => site.stop());

it('each setting stands with its value, where the preset has it from, and how well that is known', async () => {
  const page = await site.as('odrin', { viewport: NARROW });
  await page.goto('/settings');
  const row = page.getByRole('row').filter({ hasText: 'Flight-hour clock' });
  await row.waitFor();
  expect((await row.innerText()).replace(/\s+/g, ' ')).toContain('14 CFR 1.1, time in service');
  expect(await page.getByRole('row').filter({ hasText: 'Kept for the record.' }).count()).toBeGreaterThan(10);
  expect(await page.getByRole('link', { name: 'Flight-hour clock' }).count()).toBe(0);
});

it('a change that touches nothing open is settled with its reason', async () => {
  const page = await site.as('wenna', { viewport: NARROW });
  await page.goto('/settings/delayThreshold');
  await page.getByLabel('From now on').fill('10');
  await page.getByLabel('Why').fill('Our own punctuality goal.');
  await page.getByRole('button', { name: 'Show what would read otherwise' }).click();
  await page.getByText('No open deadline, extension or answer reads otherwise.').waitFor();
  expect(await faults(page)).toEqual([]);
  await page.getByRole('button', { name: 'Settle it' }).click();
  await page.getByText('our own: Our own punctuality goal.').waitFor();
});

it('one that does shows what reads otherwise, and is signed', async () => {
  const page = await site.as('wenna', { viewport: NARROW });
  await page.goto('/settings/extensionNotice');
  await page.getByLabel('24 hours').check();
  await page.getByLabel('Why').fill('As agreed with the authority.');
  await page.getByRole('button', { name: 'Show what would read otherwise' }).click();
  await page.getByText('notice: 24 hours').first().waitFor();
  await page.getByLabel('Your secret, to sign this').fill(secret);
  await page.getByRole('button', { name: 'Sign and settle it' }).click();
  const row = page.getByRole('row').filter({ hasText: 'Notice of an extension' });
  await row.waitFor();
  expect(await row.innerText()).toContain('our own: As agreed with the authority.');
});
