/** Control pastes a list of flights: a bad one is refused whole and stays to be mended, a good one is planned. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { aSite, clockFrom, faults, missing, PHONE, type Site } from './site.js';

let site: Site;
let page: Page;

beforeAll(async () => {
  site = await aSite({ now: clockFrom('2026-01-15T12:12:00.000Z') });
  page = await site.as('brask', { viewport: PHONE });
});
afterAll(() => site.stop());

const HEAD = 'flight,from,to,departure,arrival,aircraft';
const GOOD = 'QOF 901,QVR,QHT,2026-03-02T05:30Z,2026-03-02T07:10Z,Q-KEA';

it('a list with a fault stays as typed, and says what is wrong where', async () => {
  await page.goto('/control');
  await page.getByRole('link', { name: 'Plan a list of flights' }).click();
  await page.getByLabel('The list').fill(`${HEAD}\n${GOOD.replace('QHT', 'QZZ')}\n`);
  await page.getByRole('button', { name: 'Check it and plan the flights' }).click();
  expect(await missing(page.getByRole('alert'), /line 2, to: there is no station QZZ/)).toEqual([]);
  expect(await page.getByLabel('The list').inputValue()).toContain('QZZ');
});

it('a file with a good list is read into the field, planned, and leads to what the aircraft can fly', async () => {
  const file = { name: 'flights.csv', mimeType: 'text/csv', buffer: Buffer.from(`${HEAD}\r\n${GOOD}\r\n`) };
  await page.getByLabel('Take them from a file (if there is one)').setInputFiles(file);
  await page.getByRole('button', { name: 'Check it and plan the flights' }).click();
  expect(await missing(page, '1 flight is planned.')).toEqual([]);
  expect(await faults(page)).toEqual([]);
  await page.getByRole('main').getByRole('link', { name: 'Q-KEA' }).click();
  await page.getByRole('heading', { name: 'Q-KEA, next flights' }).waitFor();
});
