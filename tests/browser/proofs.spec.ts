/** Signing by other means than the secret, in the pages, with the authenticator that the browser itself pretends to have. */
import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { atLocalhost } from './authenticator.js';
import { aSite, clockFrom, faults, missing, NARROW, PATIENT, said, secret, sign, type Site } from './site.js';

let site: Site;
let page: Page;

beforeAll(async () => {
  site = await aSite({ now: clockFrom('2026-11-25T09:00:00Z') });
  page = await atLocalhost(site);
});

afterAll(() => site.stop());

const passkeys = () => page.getByRole('heading', { name: 'Passkeys' }).locator('xpath=..');

it('somebody adds a passkey on the own page, after the secret', async () => {
  await page.getByLabel('Sign-in name').fill('odrin');
  await page.getByLabel('Secret').fill(secret);
  await page.getByRole('button', { name: 'Sign in', exact: true }).click();
  await page.getByRole('link', { name: 'Odrin Vask' }).click();
  expect(await missing(page, 'Signed in your name', 'Passkeys')).toEqual([]);
  await page.getByText('Add a passkey', { exact: true }).click();
  await page.getByLabel('What you call it').fill('tablet on the trolley');
  await page.getByLabel('Your secret, to sign this').fill(secret);
  expect(await faults(page)).toEqual([]);
  await page.getByRole('button', { name: 'Add this passkey' }).click();
  expect(await missing(passkeys(), 'tablet on the trolley')).toEqual([]);
});

it('and signs in with it, without a name', async () => {
  await page.getByRole('button', { name: 'Sign out' }).click();
  await page.getByRole('button', { name: 'With a passkey' }).click();
  expect(await missing(page, 'Odrin Vask, technician')).toEqual([]);
});

it('and signs work with it: the statement is shown, and nothing is typed', async () => {
  await page.goto(`${new URL(page.url()).origin}/defects`);
  await page.getByRole('link', { name: 'Q-KEB/1' }).click();
  await page.getByRole('link', { name: 'No fault found' }).click();
  await page.getByLabel('What was checked').fill('Filter and switch checked, ground run: no bypass.');
  await page.getByLabel('Manual reference, with revision').fill('K-AMM 73-33-11 task 2, revision 12');
  await page.getByLabel('a passkey').check();
  expect(await missing(page, 'You certify', /found no fault/)).toEqual([]);
  expect(await faults(page)).toEqual([]);
  await page.getByRole('button', { name: 'Sign: no fault found' }).click();
  expect(await missing(said(page), 'Answered: no fault found.')).toEqual([]);
  expect(await missing(page, /Odrin Vask, technician, .*licence QX\.66\.20417.*signed with a passkey/)).toEqual([]);
});

it('E-03: the signer finds the signature in the own list, with its form', async () => {
  await page.getByRole('link', { name: 'Odrin Vask' }).click();
  const first = page.locator('ol.history li').first();
  expect(
    await missing(first, /found no fault/, /licence QX\.66\.20417.*signed with a passkey/, /it verifies/),
  ).toEqual([]);
  expect(await faults(page)).toEqual([]);
});

it('a removed passkey is gone, and the secret still signs', async () => {
  await page.getByRole('button', { name: 'Remove tablet on the trolley' }).click();
  await expect.poll(() => passkeys().getByText('tablet on the trolley').count(), PATIENT).toBe(0);
  await page.goto(`${new URL(page.url()).origin}/defects`);
  await page.getByRole('link', { name: 'Q-KEO/1' }).click();
  await page.goto(`${page.url()}/rectification`);
  await page.getByLabel('Your secret, to sign this').waitFor();
  expect(await page.getByLabel('a passkey').count()).toBe(0);
});

it('E-05: turning away from a statement leaves no signature', async () => {
  const list = async () => {
    const client = await site.server.signIn('odrin');
    const { signatures } = await client.get<{ signatures: object[] }>('/api/signatures');
    return signatures.length;
  };
  const before = await list();
  await page.getByLabel('Your secret, to sign this').fill(secret);
  await page.goBack();
  await page.reload();
  expect(await list()).toBe(before);
});

it('E-06: the printed status sheet names the signer, the licence, the role and the time with its base', async () => {
  const other = await site.as('odrin');
  await other.goto('/aircraft');
  await other.getByRole('link', { name: /Q-KEP/ }).click();
  await other.getByRole('link', { name: 'Status sheet' }).click();
  await other.emulateMedia({ media: 'print' });
  const signed =
    /Signed by \w+ \w+, technician, .*licence QX\.66\.\d+, authorisation QOF-L-\d+, .*\(UTC[+-]\d\d:\d\d\)/;
  expect(await missing(other, signed)).toEqual([]);
});

it('E-04: what is certified stands above the button that signs it', async () => {
  const other = await site.as('odrin');
  await other.goto('/defects');
  await other.getByRole('link', { name: 'Q-KEP/1' }).click();
  await other.getByRole('link', { name: 'placard "APU GEN INOP"' }).click();
  await other.getByText('I fitted the placard for defect').waitFor();
  await other.getByLabel('Number on the placard').fill('P-2300');
  await sign(other, 'Sign: placard fitted');
  expect(await missing(said(other), 'Placard P-2300 is signed.')).toEqual([]);
});

it('quality authorises somebody for one signature on one job, signed', async () => {
  const quality = await site.as('wenna', { viewport: NARROW });
  await quality.getByRole('link', { name: /Wenna Drisk/ }).click();
  await quality.getByRole('link', { name: 'People and what they may sign' }).click();
  const card = quality.locator('li.card', { has: quality.getByRole('heading', { name: 'Ressa Tondry' }) });
  await card.getByText('Authorise Ressa Tondry for one signature').click();
  await card.getByLabel('For which open item').selectOption({ label: await aJob(card) });
  await card.getByLabel('Why nobody else can').fill('Nobody rated is at the station.');
  expect(await missing(card, /I authorise the person chosen .* to sign work done, until/)).toEqual([]);
  expect(await faults(quality)).toEqual([]);
  await sign(quality, 'Sign: authorise Ressa Tondry');
  expect(await missing(card, 'For one signature, because Nobody rated is at the station.')).toEqual([]);
});

/** The label of an open item that is offered. */
async function aJob(card: Locator): Promise<string> {
  const option = card.getByRole('option', { name: /^Q-K/ }).first();
  await option.waitFor({ state: 'attached' });
  return (await option.textContent()) ?? '';
}
