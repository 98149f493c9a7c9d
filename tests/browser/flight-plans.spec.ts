/** Control pastes a list of flights: a bad one is refused whole and stays to be mended, a good one is planned. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { aSite, clockFrom, faults, missing, PATIENT, PHONE, type Site } from './site.js';

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
  const alert = page.getByRole('alert').filter({ hasText: 'QZZ' });
  expect(await missing(alert, /line 2, to: there is no station QZZ/)).toEqual([]);
  expect(await alert.getByRole('listitem').allTextContents()).toEqual([expect.stringMatching(/^line 2, to: /)]);
  expect(await page.getByLabel('The list').inputValue()).toContain('QZZ');
});

const FILE = 'Take them from a file (if there is one)';
const choose = (text: string | Buffer) =>
  page.getByLabel(FILE).setInputFiles({ name: 'flights.csv', mimeType: 'text/csv', buffer: Buffer.from(text) });

it('a file that cannot be taken is told, and what is in the field stays', async () => {
  const before = await page.getByLabel('The list').inputValue();
  await choose('x'.repeat(60_001));
  expect(await missing(page, 'flights.csv has 61 kB; 60 kB are the most, so send it in parts.')).toEqual([]);
  await choose(Buffer.from(`\ufeff${HEAD}`, 'utf16le'));
  expect(await missing(page, /^flights.csv is no text in UTF-8. Save it as CSV in UTF-8/)).toEqual([]);
  await page.evaluate(() => {
    const { arrayBuffer } = File.prototype;
    File.prototype.arrayBuffer = () => {
      File.prototype.arrayBuffer = arrayBuffer;
      return Promise.reject(new Error('gone'));
    };
  });
  await choose(HEAD);
  expect(await missing(page, /^flights.csv could not be read./)).toEqual([]);
  expect(await page.getByLabel('The list').inputValue()).toBe(before);
});

it('a file with a good list is read into the field, planned, and leads to what the aircraft can fly', async () => {
  await choose(`${HEAD}\r\n${GOOD}\r\n`);
  await expect.poll(() => page.getByLabel('The list').inputValue(), PATIENT).toContain(GOOD);
  // Empty again, so that the same file can be chosen after it was mended.
  expect(await page.getByLabel(FILE).inputValue()).toBe('');
  expect(await page.getByText('could not be read').count()).toBe(0);
  await page.getByRole('button', { name: 'Check it and plan the flights' }).click();
  expect(await missing(page, '1 flight is planned.')).toEqual([]);
  expect(await faults(page)).toEqual([]);
  await page.getByRole('main').getByRole('link', { name: 'Q-KEA' }).click();
  await page.getByRole('heading', { name: 'Q-KEA, next flights' }).waitFor();
});
