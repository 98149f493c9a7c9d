/** The day ahead as maintenance control reads it, and what is tried there. */
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import { aSite, DESK, faults, missing, PHONE, type Site } from './site.js';

let clock = '2026-01-15T03:00:00.000Z';
let site: Site;
let page: Page;

beforeAll(async () => {
  site = await aSite({ now: () => clock });
  clock = '2026-01-15T12:12:00.000Z';
  page = await site.as('brask', { viewport: DESK });
});
afterAll(() => site.stop());

async function dayOf(mark: string): Promise<void> {
  await page.goto('/control');
  const row = page.getByRole('row').filter({ hasText: mark });
  await row.getByRole('link', { name: / kept$/ }).click();
  await page.getByRole('heading', { name: `${mark}, next flights` }).waitFor();
}

it('says of the whole fleet who does not leave as planned, and who breaks later', async () => {
  await page.goto('/control');
  const short = page.getByRole('list', { name: 'In short' });
  expect(await missing(short, /May not fly next: Q-KEB, Q-KED/, /Not kept later: .*Q-KEO \(QOF 508, 16 Jan/)).toEqual(
    [],
  );
  const row = page.getByRole('row').filter({ hasText: 'Q-KEO' });
  expect(await missing(row, '2 of 8 kept', /Then may not fly: QOF 508 at Durrand Basin/)).toEqual([]);
  expect(await faults(page)).toEqual([]);
});

it('tells which flights are kept, which breaks first, and what would save it', async () => {
  await dayOf('Q-KEO');
  const told = await missing(
    page.getByRole('main'),
    'The first 2 of 8 flights can be flown as planned.',
    'First to break: QOF 508 at Durrand Basin',
    /Send somebody authorised and equipped to Durrand Basin \(QDU\) before QOF 508/,
    /Fix Engine start valve 2 at Durrand Basin \(QDU\) before QOF 508/,
    'If QOF 508 is flown after all.',
  );
  expect(told).toEqual([]);
  await page.getByText('Why, and what is to be done before QOF 508').click();
  expect(await missing(page.getByLabel(/^Answer for QOF 508/), 'Why, condition by condition')).toEqual([]);
  const flight = page.getByRole('listitem').filter({ hasText: 'Why, and what is to be done before QOF 508' });
  const changed = ['Changed since QOF 507', /nobody authorised and equipped is at the departure station/];
  const owed = ['Owed again at Durrand Basin', /Between .* and 16 Jan 2026 .*, 15 min/, /It cannot be done there/];
  expect(await missing(flight, ...changed, ...owed)).toEqual([]);
  expect(await missing(page.getByRole('main'), 'As for QOF 506.')).toEqual([]);
  expect(await faults(page)).toEqual([]);
});

it('answers what is tried, and stays readable on a telephone', async () => {
  await dayOf('Q-KED');
  await page.getByLabel(/^Wing anti-ice valve/).check();
  await page.getByLabel('MEL entry').fill('80-12-11');
  await page.getByLabel('Of the flight').selectOption('flight.authorisedPersonAtStation');
  await page.getByLabel('authorised and equipped person at departure').selectOption('no');
  await page.getByRole('button', { name: 'What then?' }).click();
  const answer = page.getByLabel('Answer for QOF 411, if that were so');
  const said = ['may not fly', /nobody authorised and equipped is at the departure station/, 'What would help'];
  expect(await missing(answer, ...said)).toEqual([]);
  await page.setViewportSize(PHONE);
  expect(await faults(page)).toEqual([]);
});

it('proposes an exchange of rotations once operations have said whom they allow', async () => {
  await page.setViewportSize(DESK);
  await page.goto('/control');
  await page.getByRole('link', { name: 'Exchange rotations between aircraft' }).click();
  const which = page.getByRole('group', { name: 'Which aircraft' });
  for (const mark of ['Q-KEA', 'Q-KED']) await which.getByLabel(mark).check();
  await page.getByRole('button', { name: 'Look for an exchange' }).click();
  const proposal = page.getByLabel('The proposal');
  expect(await missing(proposal, /Operations have not said which aircraft they allow/)).toEqual([]);
  for (const box of await page
    .getByRole('group', { name: /^Operations allow/ })
    .getByRole('checkbox')
    .all()) {
    await box.check();
  }
  await page.getByRole('button', { name: 'Look for an exchange' }).click();
  const words = ['16 flights change aircraft.', 'takes over the flights of Q-KEA', 'takes over the flights of Q-KED'];
  expect(await missing(proposal, ...words)).toEqual([]);
  expect(await faults(page)).toEqual([]);
  await page.setViewportSize(PHONE);
  expect(await faults(page)).toEqual([]);
});
