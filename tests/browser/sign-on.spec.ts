/** Coming in and signing by the sign-on of somebody else, in the pages: a real provider beside the server. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { freePort } from '../support/running-server.js';
import { SignOnProvider } from '../support/sign-on-provider.js';
import { aSite, clockFrom, faults, missing, said, secret, type Site } from './site.js';

let site: Site;
let provider: SignOnProvider;
let page: Page;

beforeAll(async () => {
  const port = await freePort();
  const signOn = {
    name: 'Staff sign-on',
    issuer: `http://127.0.0.1:${port}`,
    clientId: 'proviso',
    clientSecret: 'secret of proviso',
  };
  // A fresh sign-on happens at a real instant, so the clock is the real one.
  site = await aSite({ now: clockFrom(new Date().toISOString()), outside: { signOn } });
  const redirect = `${site.server.url}/api/sign-on/callback`;
  provider = await SignOnProvider.start([{ id: 'proviso', redirect }], port);
  provider.account = 'account-of-odrin';
  page = await site.as('odrin');
});

afterAll(async () => {
  await site.stop();
  await provider.stop();
});

it('somebody links the own account, after the secret', async () => {
  await page.getByRole('link', { name: 'Odrin Vask' }).click();
  await page.getByLabel('Your secret, to sign this').last().fill(secret);
  expect(await faults(page)).toEqual([]);
  await page.getByRole('button', { name: 'Link my account at Staff sign-on' }).click();
  expect(await missing(page, 'Done. You may close this window.')).toEqual([]);
  await page.getByRole('link', { name: 'Go to your own page' }).click();
  expect(await missing(page, /Your account there is linked/)).toEqual([]);
});

it('and signs after a fresh sign-on in a window of its own, with what was typed still there', async () => {
  await page.goto('/defects');
  await page.getByRole('link', { name: 'Q-KEB/1' }).click();
  await page.getByRole('link', { name: 'No fault found' }).click();
  await page.getByLabel('What was checked').fill('Filter and switch checked, ground run: no bypass.');
  await page.getByLabel('Manual reference, with revision').fill('K-AMM 73-33-11 task 2, revision 12');
  await page.getByLabel('a fresh sign-on: Staff sign-on').check();
  await page.getByText(/found no fault/).waitFor();
  await page.getByRole('button', { name: 'Sign: no fault found' }).click();
  expect(await missing(said(page), 'Answered: no fault found.')).toEqual([]);
  expect(await missing(page, /signed after a fresh sign-on/)).toEqual([]);
});

it('and comes in by it; an account that nobody linked is told what to do', async () => {
  await page.getByRole('button', { name: 'Sign out' }).click();
  await page.getByRole('button', { name: 'Staff sign-on' }).click();
  expect(await missing(page, 'Odrin Vask, technician')).toEqual([]);
  const stranger = await site.visitor();
  provider.account = 'account-of-nobody';
  await stranger.getByRole('button', { name: 'Staff sign-on' }).click();
  expect(await missing(stranger, 'Nobody here has linked this account', /link it on your own page/)).toEqual([]);
  expect(await faults(stranger)).toEqual([]);
});
