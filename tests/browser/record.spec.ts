/** What an inspector and an administrator are shown of the record, and how somebody who left is erased from it. */
import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Shapes } from '../support/api-client.js';
import { anotherTechnician } from '../journeys/another-technician.js';
import { aSite, DESK, faults, missing, PHONE, sign, type Site } from './site.js';

let clock = '2026-01-15T12:00:00.000Z';
let site: Site;
let page: Page;

beforeAll(async () => {
  site = await aSite({ now: () => clock });
  await anotherTechnician(site.server);
  page = await site.as('ulla', { viewport: DESK });
});

afterAll(() => site.stop());

it('an administrator begins with the people, and is told that no backup was ever made', async () => {
  await page.getByRole('heading', { level: 1, name: 'People' }).waitFor();
  expect(await missing(page, 'No backup was ever made, and no head of the record was ever signed.')).toEqual([]);
  await page.getByRole('link', { name: 'See the record' }).click();
  expect(await missing(page, /Last backup\. Have one made on the server: proviso backup --to FILE/)).toEqual([]);
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
  const written = await writtenAbout('Seal of the cargo door torn, seen by Sorremond.');
  const tavik = page.locator('li.card', { has: page.getByRole('heading', { name: 'Tavik Sorremond' }) });
  await page.goto('/people');
  await tavik.getByText('Change the account of Tavik Sorremond').click();
  await tavik.getByText('Tavik Sorremond leaves now').click();
  await tavik.getByLabel('Why, for the record').locator('visible=true').fill('Moves away.');
  await tavik.getByRole('button', { name: 'End the access of Tavik Sorremond' }).click();
  await tavik.getByText(/^Left 15 Jan 2026/).waitFor();
  await tavik.getByText('Erase the personal data of Tavik Sorremond').click();
  expect(await missing(tavik, /^It has to be kept until 15 Jan 2029/, /Come back after the time given/)).toEqual([]);
  clock = '2029-01-15T12:00:01.000Z';
  page = await site.as('wenna', { viewport: DESK });
  await page.goto('/record/keeping');
  await page.getByText('Hold something beyond its period').click();
  await page.getByLabel('What').selectOption('Tavik Sorremond, who left');
  await page.getByLabel('Why, for the record').fill('A claim is open.');
  await page.getByRole('button', { name: 'Hold it' }).click();
  await page.getByRole('heading', { level: 3, name: 'Tavik Sorremond' }).waitFor();
  expect(await missing(page, 'Held', 'Nobody is erased by the program itself')).toEqual([]);
  expect(await faults(page)).toEqual([]);
  await page.setViewportSize(PHONE);
  expect(await faults(page)).toEqual([]);
  await page.setViewportSize(DESK);
  await page.goto('/people');
  const held = page.locator('li.card', { has: page.getByRole('heading', { name: 'Tavik Sorremond' }) });
  await held.getByText('Erase the personal data of Tavik Sorremond').click();
  expect(await missing(held, 'Held: the person.')).toEqual([]);
  await page.goto('/record/keeping');
  await page.getByText('Release Tavik Sorremond').first().click();
  await page.getByLabel('Why, for the record').locator('visible=true').fill('The claim is settled.');
  await page.getByRole('button', { name: 'Release Tavik Sorremond' }).click();
  expect(await missing(page, 'Nothing is held.')).toEqual([]);
  await page.getByRole('link', { name: 'Tavik Sorremond' }).click();
  const card = page.locator('li.card', { has: page.getByRole('heading', { name: 'Tavik Sorremond' }) });
  await card.getByText('Erase the personal data of Tavik Sorremond').click();
  expect(await missing(card, 'It cannot be undone.', /^Stays: every entry and signature/)).toEqual([]);
  await card.getByLabel('Why, for the record').fill('Asked for, and nothing binds it any longer.');
  expect(await missing(card, `${written}: 1 text`, /^An erasure cannot take these words away/)).toEqual([]);
  expect(await faults(page)).toEqual([]);
  await sign(page, 'Sign: erase the personal data');
  expect(await missing(page, /^\(name erased\) [0-9a-f]{16}$/)).toEqual([]);
  expect(await page.getByText('Tavik Sorremond').count()).toBe(0);
  const box = page.getByRole('status').filter({ hasText: 'Erased: (name erased)' });
  expect(await missing(box, `${written}: 1 text`, /^This server writes no list of erasures/)).toEqual([]);
  expect(await faults(page)).toEqual([]);
});

/** @returns the number of the item */
async function writtenAbout(description: string): Promise<string> {
  const technician = await site.server.signIn('odrin');
  const { aircraft } = await technician.get<Shapes['Fleet']>('/api/fleet');
  const body = { aircraft: aircraft[0]?.id, origin: 'technician', description, recordedAt: clock };
  return (await technician.post<Shapes['ActDone']>('/api/defects', body)).body.defect.number;
}
