/**
 * What was flown, as people see and mend it: messages taken in by hand, the tray, legs with their history, a delay beside
 * a defect, the counters of engines, and what each of them changed.
 */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Shapes } from '../support/api-client.js';
import { aSite, clockFrom, DESK, faults, sign, type Site } from './site.js';

let site: Site;
let page: Page;
let technician: Page;
let plane: Shapes['FleetLine'];
let mark: string;

const message = (flight: string, rest: string) => `MVT\n${flight}/25.${mark}.QVR\n${rest}`;

beforeAll(async () => {
  site = await aSite({ now: clockFrom('2026-11-25T15:00:00Z') });
  const control = await site.server.signIn('brask');
  const { aircraft } = await control.get<Shapes['Fleet']>('/api/fleet');
  plane = aircraft.find(({ registration }) => registration === 'Q-KEO')!;
  mark = plane.registration.replace('-', '');
  page = await site.as('jorik', { viewport: DESK });
  technician = await site.as('odrin', { viewport: { width: 820, height: 1180 } });
});

afterAll(() => site.stop());

it('messages are taken in by hand: what was read, what waits, and what reads otherwise', async () => {
  await page.goto('/control');
  await page.getByRole('link', { name: 'Movement messages' }).click();
  await page.getByText('Nothing is here').waitFor();
  await page.getByText('Take messages in by hand').click();
  const texts = [
    message('QB71', 'AD0700/0712 EA0900 QHT\nDL41/0025'),
    `MVT\nQB71/25.${mark}.QHT\nAA0905/0911`,
    message('QB72', 'AD2561/9999'),
  ];
  await page.getByLabel('The messages as they came').fill(texts.join('\n\n'));
  await page.getByRole('button', { name: 'Take them in' }).click();
  await page.getByText('3 messages read; 1 leg written; 1 entry for the tray').waitFor();
  await page.getByText(/off blocks 07:00, airborne 07:12, touch-down 09:05, on blocks 09:11/).waitFor();
  expect(await faults(page)).toEqual([]);
});

it('an entry of the tray tells what is wrong, and is mended by a person with a reason', async () => {
  await page.getByText(/2561/).first().waitFor();
  await page.getByText('Mend it', { exact: true }).first().click();
  await page.getByLabel(/Send the text as it should read/).check();
  await page.getByLabel('The text', { exact: true }).fill(message('QB72', 'AD1000/1012 EA1200 QHT'));
  await page.getByLabel('Why, or where you know it from').fill('told by the crew');
  await page.getByRole('button', { name: 'Mend it' }).click();
  await page.getByText('1 message read; 1 leg written').waitFor();
  await page.getByText('Nothing is here').waitFor();
  await page.getByRole('link', { name: 'Mended by a person' }).click();
  await page.getByText(/Mended by Jorik Pallowen .*: told by the crew/).waitFor();
  expect(await page.locator('pre', { hasText: 'AD2561/9999' }).count()).toBe(1);
});

it('legs stand with their counters, and a delay for reason 41 beside the defects open then', async () => {
  await page.goto(`/aircraft/${plane.id}`);
  await page.getByRole('link', { name: 'Flown', exact: true }).click();
  await page.getByRole('heading', { name: 'Flown', level: 1 }).waitFor();
  await page.getByText('Late for an aircraft defect (delay reason 41)').waitFor();
  await page.getByText('25 min late').waitFor();
  await page.getByText(/Open then or in the day before/).waitFor();
  await page.getByText('1:53').first().waitFor();
  expect(await faults(page)).toEqual([]);
});

it('a leg is corrected with a reason; what stood before stays readable', async () => {
  await page.getByRole('link', { name: 'Correct QB71' }).click();
  await page.getByLabel('Time of touch-down, UTC').fill('0855');
  await page.getByLabel('Why it is corrected').fill('read from the log sheet');
  await page.getByRole('button', { name: 'Correct it' }).click();
  await page.getByText('QB71 is corrected.', { exact: true }).waitFor();
  await page.getByText('The version before', { exact: true }).click();
  await page.getByText(/touch-down 09:05/).waitFor();
  await page.getByText('read from the log sheet').waitFor();
  await page.getByRole('link', { name: 'Correct QB71' }).click();
  await page.getByLabel('Time of touch-down, UTC').fill('0650');
  await page.getByLabel('Why it is corrected').fill('mistyped');
  await page.getByRole('button', { name: 'Correct it' }).click();
  await page
    .getByText(/is not after/)
    .first()
    .waitFor();
  expect(page.url()).toContain('/flown/');
});

it('the counters of an engine are stated and signed, go on with legs, and are withdrawn', async () => {
  await technician.goto(`/aircraft/${plane.id}/engines`);
  await technician.getByText('they are not known').waitFor();
  await technician.getByLabel('What its counters read').check();
  await technician.getByLabel('Engine', { exact: true }).fill('1');
  await technician.getByLabel('Serial number').fill('K-101');
  await technician.getByLabel('Date it read so, UTC').fill('2026-11-25');
  await technician.getByLabel('Time it read so, UTC').fill('0630');
  await technician.getByLabel('Hours on the counter').fill('74020:30');
  await technician.getByLabel('Cycles on the counter').fill('9001');
  await technician.getByLabel('Where it is known from').fill('its log book');
  await sign(technician, 'Sign: state it');
  await technician.getByText('It is signed and counted.').waitFor();
  await technician.getByText('74022:13').waitFor();
  expect(await faults(technician)).toEqual([]);
  await technician.getByRole('button', { name: 'Correct or withdraw' }).click();
  const withdrawing = technician.locator('section', { hasText: 'Or it was never so' }).last();
  await withdrawing.getByLabel('Why', { exact: true }).fill('the other aircraft');
  await withdrawing.getByLabel('Your secret, to sign this').fill('copper lantern meadow');
  await withdrawing.getByRole('button', { name: 'Sign: withdraw it' }).click();
  await technician.getByText('they are not known').waitFor();
  await technician.getByText(/withdrawn, it was never so/).waitFor();
});

it('fits a telephone', async () => {
  const phone = await site.as('jorik');
  for (const address of [
    `/aircraft/${plane.id}/flown`,
    '/movements?state=mended',
    `/aircraft/${plane.id}/engines`,
    `/aircraft/${plane.id}/flown/enter`,
  ]) {
    await phone.goto(address);
    await phone.getByRole('heading', { level: 1 }).waitFor();
    await expect.poll(() => phone.getByText('Reading…').count()).toBe(0);
    expect(await faults(phone)).toEqual([]);
  }
});
