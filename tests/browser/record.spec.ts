/** What an inspector and an administrator are shown of the record, and how somebody who left is erased from it. */
import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Shapes } from '../support/api-client.js';
import { aSite, DESK, faults, missing, sign, type Site } from './site.js';

let clock = '2026-01-15T12:00:00.000Z';
let site: Site;
let page: Page;

beforeAll(async () => {
  site = await aSite({ now: () => clock });
  page = await site.as('ulla', { viewport: DESK });
});

afterAll(() => site.stop());

it('an administrator begins with the people, and is told that no backup was ever made', async () => {
  await page.getByRole('heading', { level: 1, name: 'People' }).waitFor();
  expect(await missing(page, 'No backup was ever made, and no head of the record was ever signed.')).toEqual([]);
  await page.getByRole('link', { name: 'See the record' }).click();
  expect(await missing(page, /Last backup\. Have one made on the server: proviso backup FILE/)).toEqual([]);
});

it('the whole record is verified on the page', async () => {
  await page.getByRole('button', { name: 'Verify the whole record now' }).click();
  expect(await missing(page, /^All \d+ entries fit, from the first to the newest\.$/)).toEqual([]);
  expect(await faults(page)).toEqual([]);
});

it('one history and one proof are handed out as files', async () => {
  await page.getByLabel('Of which aircraft or open item').selectOption('Q-KEB');
  const history = page.waitForEvent('download');
  await page.getByRole('link', { name: 'Whole history with proofs' }).click();
  const { about } = JSON.parse(await readFile(await (await history).path(), 'utf8')) as Shapes['RecordHistory'];
  expect(about.subject).toBe('Q-KEB');
  await page.getByLabel('Number of the entry').fill('3');
  const proof = page.waitForEvent('download');
  await page.getByRole('link', { name: 'Save the proof' }).click();
  const { entries } = JSON.parse(await readFile(await (await proof).path(), 'utf8')) as Shapes['RecordProof'];
  expect(entries.map(({ number }) => number)).toEqual([3]);
});

it('a technician sees how the record stands, and is offered neither verifying nor files', async () => {
  const gate = await site.as('odrin');
  await gate.getByRole('link', { name: 'More' }).click();
  expect(await missing(gate, 'Periods of keeping: for quality or administrator.')).toEqual([]);
  await gate.getByRole('link', { name: /^The record/ }).click();
  expect(await missing(gate, /entries, each written once/)).toEqual([]);
  expect(await gate.getByRole('button', { name: /Verify/ }).count()).toBe(0);
  expect(await gate.getByRole('link', { name: /history/ }).count()).toBe(0);
});

it('somebody who left is listed once nothing has to be kept, and erased with what stays said first', async () => {
  const wick = page.locator('li.card', { has: page.getByRole('heading', { name: 'Wick Straddock' }) });
  await page.goto('/people');
  await wick.getByText('Change the account of Wick Straddock').click();
  await wick.getByText('Wick Straddock leaves now').click();
  await wick.getByLabel('Why, for the record').locator('visible=true').fill('Moves away.');
  await wick.getByRole('button', { name: 'End the access of Wick Straddock' }).click();
  await wick.getByText(/^Left 15 Jan 2026/).waitFor();
  await wick.getByText('Erase the personal data of Wick Straddock').click();
  expect(await missing(wick, /^It has to be kept until 15 Jan 2029/, /Come back after the time given/)).toEqual([]);
  clock = '2029-01-15T12:00:01.000Z';
  page = await site.as('wenna', { viewport: DESK });
  await page.goto('/record/keeping');
  await page.getByRole('link', { name: 'Wick Straddock' }).click();
  const card = page.locator('li.card', { has: page.getByRole('heading', { name: 'Wick Straddock' }) });
  await card.getByText('Erase the personal data of Wick Straddock').click();
  expect(await missing(card, 'It cannot be undone.', /^Stays: every entry and signature/)).toEqual([]);
  await card.getByLabel('Why, for the record').fill('Asked for, and nothing binds it any longer.');
  expect(await faults(page)).toEqual([]);
  await sign(page, 'Sign: erase the personal data');
  expect(await missing(page, /^\(name erased\) [0-9a-f]{16}$/)).toEqual([]);
  expect(await page.getByText('Wick Straddock').count()).toBe(0);
});
