/**
 * A paper sheet over the clock change, typed in on the page: the sheet says 23:40, it is typed at the second 02:20, and
 * the days count from the sheet in the time of the base. A flight five minutes past the last midnight is refused.
 *
 * Published story 1, DERIVED from the rules of counting calendar days in the time of the base (interval case I-23).
 */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { type Airline, anAirline } from '../journeys/an-airline.js';
import { plainList } from '../support/plain-list.js';
import { aSite, clockFrom, faults, said, missing, sign, type Site } from './site.js';

const MEL = plainList('Operator QPR', [{ number: '33-11-01', title: 'Cockpit dome light', category: 'B' }]);

let site: Site;
let airline: Airline;
let page: Page;

beforeAll(async () => {
  site = await aSite({ now: clockFrom('2026-10-25T01:20:00Z'), demo: false });
  airline = await anAirline(site.server, {
    code: 'QPR',
    base: 'Europe/Paris',
    aircraftType: 'Ambrel',
    people: [
      {
        signIn: 'yorvin',
        name: 'Yorvin Tesk',
        roles: ['technician'],
        privileges: ['write-up', 'defer', 'sign-procedure', 'release'],
      },
      { signIn: 'mellory', name: 'Mellory Gand', roles: ['mel-engineer'] },
    ],
    aircraft: ['Q-ABA'],
    flights: [
      { number: 'QPR 1', aircraft: 'Q-ABA', offBlockAt: '2026-10-27T22:50:00Z', onBlockAt: '2026-10-28T00:20:00Z' },
      { number: 'QPR 2', aircraft: 'Q-ABA', offBlockAt: '2026-10-27T23:05:00Z', onBlockAt: '2026-10-28T00:35:00Z' },
    ],
  });
  const engineer = await site.server.signIn('mellory');
  await engineer.post('/api/mel', { file: 'ambrel.yaml', text: MEL });
  page = await site.as('yorvin');
});

afterAll(() => site.stop());

it('the page offers the time now in the base, with the offset of the second 02:20', async () => {
  await page.getByRole('link', { name: /Q-ABA/ }).click();
  await page.getByRole('link', { name: 'Write up a defect' }).click();
  expect(await missing(page, 'Now: 25 Oct 2026 02:20 (UTC+01:00)')).toEqual([]);
});

it('a log time in the hour that clocks show twice is asked for: the first or the second', async () => {
  await page.getByLabel('Earlier, on a paper sheet').check();
  await page.getByLabel('Date in the log').fill('2026-10-25');
  await page.getByLabel('Time in the log').fill('0210');
  await page.getByLabel('the first (UTC+02:00)').check();
  expect(await missing(page, '25 Oct 2026 02:10 (UTC+02:00), Europe/Paris')).toEqual([]);
  await page.getByLabel('the second (UTC+01:00)').check();
  expect(await missing(page, '25 Oct 2026 02:10 (UTC+01:00), Europe/Paris')).toEqual([]);
});

it('an hour that clocks skip cannot be sent', async () => {
  await page.getByLabel('Date in the log').fill('2026-03-29');
  await page.getByLabel('Time in the log').fill('02:30');
  expect(await missing(page, 'Clocks skip this time on that day.')).toEqual([]);
  await page.getByLabel('What is wrong').fill('Dome light does not come on.');
  await page.getByRole('button', { name: 'Write it up' }).click();
  expect(page.url()).toContain('/write-up');
  expect(await page.evaluate('document.querySelectorAll("input:invalid").length')).toBe(1);
});

it('typed in late without a reason it is refused, and nothing that was typed is lost', async () => {
  await page.getByLabel('Date in the log').fill('2026-10-24');
  await page.getByLabel('Time in the log').fill('2340');
  expect(await missing(page, '24 Oct 2026 23:40 (UTC+02:00), Europe/Paris')).toEqual([]);
  await page.getByLabel('Log sheet number').fill('118');
  await page.getByLabel('Flight crew').check();
  await page.getByRole('button', { name: 'Write it up' }).click();
  const problem = page.getByRole('alert');
  await problem.getByText('it is entered here 220 minutes later, and no reason is given').waitFor();
  await problem.getByText('The day of discovery stays the day in the log.').waitFor();
  expect(await page.getByLabel('What is wrong').inputValue()).toBe('Dome light does not come on.');
  expect(await page.getByLabel('Log sheet number').inputValue()).toBe('118');
  expect(await faults(page)).toEqual([]);
});

it('with a reason it is written up, and deferred under row B with three days from the sheet', async () => {
  await page.getByLabel('Why it is entered late').fill('No signal at the stand.');
  await page.getByRole('button', { name: 'Write it up' }).click();
  await page.getByRole('link', { name: /33-11-01/ }).click();
  await page.getByRole('button', { name: 'Choose row 1' }).click();
  await sign(page, 'Sign: defer');
  await said(page).waitFor();
  expect(await missing(page, '3 of 3 calendar days left, until 27 Oct 2026 23:59 local')).toEqual([]);
  expect(await missing(page, 'days 25 Oct, 26 Oct, 27 Oct, ends 27 Oct 2026 23:59 local')).toEqual([]);
});

it('the history shows the sheet, both times with their offsets, and who typed it in', async () => {
  const written = page.locator('ol.history > li').first();
  const text = await written.innerText();
  expect(text).toContain('Written up on sheet 118: Dome light does not come on.');
  expect(text).toContain('In the log 24 Oct 2026 23:40 (UTC+02:00)');
  expect(text).toMatch(/Entered here 25 Oct 2026 02:2\d \(UTC\+01:00\)/);
  expect(text).toContain('Yorvin Tesk');
});

it('off-block at 23:50 of the last day may fly, five past midnight may not', async () => {
  await page.getByRole('link', { name: 'Q-ABA', exact: true }).click();
  const answer = page.getByRole('region', { name: 'Answer for QPR 1' });
  await answer.getByText('may fly', { exact: true }).waitFor();
  await page.getByText('The flights after it (1)').click();
  await page.getByRole('link', { name: 'QPR 2, QWA to QWB' }).click();
  const late = page.getByRole('region', { name: /^Answer for QPR 2/ });
  await late.getByText('may not fly', { exact: true }).waitFor();
  await late.getByText('off blocks 28 Oct 2026 00:05 (UTC+01:00) is after it').first().waitFor();
  expect(await faults(page)).toEqual([]);
  expect(airline.flights['QPR 2']).toBe(page.url().split('/').at(-1));
});
