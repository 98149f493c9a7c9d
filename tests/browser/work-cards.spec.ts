/**
 * Two work cards as a technician works them on a telephone: the filter of a hydraulic pump, and the start valve opened by
 * hand. One of each with everything right; and each thing that can be forgotten is stopped by a sentence that names it.
 */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { doCard } from '../support/do-card.js';
import { aSite, faults, missing, PATIENT, said, sign, type Site } from './site.js';

let site: Site;
let odrin: ApiClient;
let page: Page;
let defect: string;

/** A clock that the test moves on: minutes pass when it says so. */
let now = Date.parse('2026-11-25T09:00:00Z');
const pass = (minutes: number): void => void (now += minutes * 60_000);

beforeAll(async () => {
  site = await aSite({ now: () => new Date((now += 50)).toISOString() });
  odrin = await site.server.signIn('odrin');
  page = await site.as('odrin');
});

afterAll(() => site.stop());

async function writtenUp(entry: string, unit: string): Promise<string> {
  const fleet = await odrin.get<{ aircraft: { id: string; registration: string }[] }>('/api/fleet');
  const aircraft = fleet.aircraft.find(({ registration }) => registration === 'Q-KEA')?.id;
  const item = { entry, units: [unit] };
  const said = {
    origin: 'technician',
    description: 'Found on the walk-round.',
    recordedAt: new Date(now).toISOString(),
  };
  const written = await odrin.post<Shapes['ActDone']>('/api/defects', { aircraft, ...said, item });
  return written.body.defect.id;
}

/** Opens the card's page and waits until the step is the one worked on. */
async function atStep(text: string): Promise<void> {
  await page.locator('.card-steps > li.now').getByText(text).first().waitFor();
}

async function press(button: string, fields: Record<string, string> = {}): Promise<void> {
  for (const [label, value] of Object.entries(fields)) await page.getByLabel(label).fill(value);
  await page.getByRole('button', { name: button, exact: true }).click();
}

const stopped = (...words: (string | RegExp)[]) => missing(page.getByRole('alert'), ...words);

it('the technician finds the filter card at the item, and starts it', async () => {
  defect = await writtenUp('29-13-11', '1');
  await page.goto(`/defects/${defect}`);
  const card = page.getByRole('listitem').filter({ hasText: 'Case-drain filter' });
  await card.getByText('K-AMM 29-13-11 task 8, revision 12').waitFor();
  await card.getByRole('button', { name: 'Start this card' }).click();
  await page.getByRole('heading', { level: 1, name: /Case-drain filter/ }).waitFor();
  expect(await missing(page, 'The manual prevails.', 'Depressurise the system', 'Counted out: 0')).toEqual([]);
  expect(await faults(page)).toEqual([]);
});

it('what is pulled, fitted and opened is counted out at the foot, with its numbers', async () => {
  await atStep('Pump OFF');
  await press('Done');
  await atStep('Pull and collar');
  await press('It is pulled', { 'Number read on the pump breaker with its collar': 'C-22' });
  await atStep('Fit the placard');
  await press('It is fitted', { 'Number read on the DO NOT PRESSURISE placard': 'P-7' });
  await atStep('Release the latches');
  await press('It is unlatched', { 'How many unlatched, of 6': '6' });
  await atStep('Open panel 197');
  await press('It is open');
  await atStep('Let the pump case cool');
  expect(
    await missing(page, 'Counted out: 4', /PULLED \(C-22\)/, /FITTED \(P-7\)/, /6 latches of panel 197/),
  ).toEqual([]);
});

it('a wait counts down from its recorded start, after a reload too, and is not cut short', async () => {
  await press('Begin: the time counts from now');
  await page.getByText(/^(10:00|9:5\d) left$/).waitFor();
  pass(4);
  await page.reload();
  await page.getByText(/^(6:0\d|5:5\d) left$/).waitFor();
  await press('The time is over');
  expect(await stopped(/began at .* and lasts 10 minutes: it is cut short by/)).toEqual([]);
  pass(6);
  await press('The time is over');
  await atStep('Remove the filter bowl');
});

it('the seals are not left out: what comes after names them', async () => {
  await press('Done');
  await atStep('Fit a new filter element');
  await press('Renewed', {
    'Part number of the new case-drain filter element': 'KF-1',
    'Batch, serial or certificate number': 'B-1',
  });
  await atStep('Renew both bowl seals');
  await page.getByText(/steps come later$/).click();
  await page.locator('.card-steps > li').filter({ hasText: 'Take the torque wrench' }).getByRole('button').click();
  await press('It is issued', { 'Number read on the torque wrench': 'TW-3' });
  expect(await stopped('seals: Renew both bowl seals')).toEqual([]);
  await page
    .locator('.card-steps > li')
    .filter({ hasText: 'Renew both bowl seals' })
    .first()
    .getByRole('button')
    .click();
  const seal = { 'Part number of the new bowl seal': 'KS-2', 'Batch, serial or certificate number': 'B-2' };
  await press('Renewed', { ...seal, 'How many renewed, of 2': '1' });
  expect(await stopped('renews 2 of bowl seal; 1 are named')).toEqual([]);
  await press('Renewed', { ...seal, 'How many renewed, of 2': '2' });
  await atStep('Take the torque wrench');
  await press('It is issued', { 'Number read on the torque wrench': 'TW-3' });
  await atStep('Tighten the bowl');
});

it('a value outside the limits of the card does not go on', async () => {
  await press('Read', { 'torque of the bowl, Nm': '29' });
  expect(await stopped('torque of the bowl reads 29 Nm; the card allows 24 to 28 Nm')).toEqual([]);
  await press('Read', { 'torque of the bowl, Nm': '26' });
  await atStep('Bring the torque wrench back');
  await press('It is returned', { 'Number read on the torque wrench': 'TW-33' });
  expect(await stopped('still there: torque wrench at right wing root (TW-3)')).toEqual([]);
  await press('It is returned', { 'Number read on the torque wrench': 'TW-3' });
  await atStep('Wipe the bay dry');
  await press('Done');
});

it('the collar that comes off is the one that went on', async () => {
  await atStep('Remove the collar');
  await press('It is reset', { 'Number read on the pump breaker with its collar': 'C-21' });
  expect(
    await stopped('still there: pump breaker with its collar at main equipment bay, panel P3, B1 (C-22)'),
  ).toEqual([]);
  await page.getByLabel('Your secret, to sign this').fill('');
  await sign(page, 'Sign the card');
  expect(
    await stopped('still pulled: pump breaker with its collar', 'still fitted: DO NOT PRESSURISE placard'),
  ).toEqual([]);
  await press('It is reset', { 'Number read on the pump breaker with its collar': 'C-22' });
});

it('a leak check cut short is refused, and its readings and the look afterwards are asked for', async () => {
  await atStep('Run the pump');
  await page.getByLabel('Second person, there with you').selectOption({ label: 'Tamsel Quorry, technician' });
  await press('Begin: the time counts from now');
  await page.getByText(/left$/).waitFor();
  pass(3);
  const read = { 'system pressure, psi': '3000', 'case temperature, C': '81' };
  await press('The time is over', read);
  expect(await stopped(/Step leak-check .* it is cut short by/)).toEqual([]);
  pass(2);
  await press('The time is over', read);
  await page.getByRole('button', { name: 'Looked' }).waitFor();
  await press('Looked', { 'Pump stopped: no drop at bowl and lines.': 'dry' });
  await atStep('Switch the pump OFF');
  await press('Done');
});

it('who did the work does not inspect it; a second person signs on a telephone of their own', async () => {
  await atStep('A second person sees');
  const own = page.locator('.card-steps > li.now');
  await own.getByLabel('What you looked at and found').fill('Tight and dry.');
  await sign(own as unknown as Page, 'Sign the inspection');
  expect(await missing(own.getByRole('alert'), /Odrin Vask had a hand in step element/)).toEqual([]);
  const wick = await site.as('wick');
  await wick.goto(page.url());
  const second = wick.locator('.card-steps > li.now');
  await second.getByLabel('What you looked at and found').fill('Tight and dry.');
  await sign(second as unknown as Page, 'Sign the inspection');
  await second.getByText('Close panel 197').waitFor();
  await page.reload();
  await atStep('Close panel 197');
});

it('the panel, its latches and the placard that are forgotten are named, one latch too', async () => {
  await sign(page, 'Sign the card');
  expect(
    await stopped(
      'still open: access panel 197 of the pump bay at right wing root',
      'still unlatched: 6 latches of panel 197',
      'still fitted: DO NOT PRESSURISE placard at flight deck, hydraulic panel (P-7)',
      'not done: quantity',
    ),
  ).toEqual([]);
  expect(await faults(page)).toEqual([]);
  await press('It is closed');
  await atStep('Latch panel 197');
  await press('It is latched', { 'How many latched, of 6': '5' });
  expect(await stopped('5 of 6 latches of panel 197 latched; missing: 1')).toEqual([]);
  await press('It is latched', { 'How many latched, of 6': '6' });
  await atStep('Remove the placard');
  await press('It is removed', { 'Number read on the DO NOT PRESSURISE placard': 'P-7' });
  await atStep('Read the hydraulic quantity');
  await press('Read', { 'hydraulic quantity, %': '92' });
});

it('with everything done and counted in, the card is signed and becomes work on the defect', async () => {
  await page.getByText('Counted out: 0').waitFor();
  await page.getByText(/^read 92 %: Odrin Vask/).waitFor();
  await sign(page, 'Sign the card');
  await said(page).waitFor();
  expect(await missing(page, /Work card: Case-drain filter/)).toEqual([]);
});

it('once the manual is revised, the card of the start valve waits for somebody who may confirm it', async () => {
  const engineer = await site.server.signIn('sennet');
  defect = await writtenUp('80-12-11', '2');
  await odrin.sign(
    defect,
    'deferral',
    { act: 'defer', entry: '80-12-11', row: '1' },
    { row: '1', item: { entry: '80-12-11', units: ['2'] } },
  );
  const revised = { manual: 'K-AMM', task: '80-12-11 task 3', revision: '13', issuedOn: '2026-11-01' };
  await engineer.post('/api/manual-revisions', revised);
  const of = { defect, card: 'start-valve-by-hand', procedure: '80-12-11/1/M2', pass };
  const work = await doCard(odrin, of);
  await page.goto(`/defects/${defect}/cards/${work}`);
  await page.getByText('Revision 13 of 2026-11-01 is recorded since.').waitFor();
  await sign(page, 'Sign the card');
  expect(await stopped('was written from K-AMM 80-12-11 task 3, revision 12; revision 13')).toEqual([]);
  const held = { aircraftType: 'Kellwing', card: 'start-valve-by-hand', against: '13' };
  const asked = new URLSearchParams(held).toString();
  const { statement } = await engineer.get<Shapes['Statement']>(`/api/card-confirmations/statement?${asked}`);
  const refused = await odrin.refused('POST', '/api/card-confirmations', {
    body: { ...held, sign: { secret: odrin.secret, statement } },
  });
  expect(refused.code).toBe('authorisation-does-not-cover');
  await engineer.post('/api/card-confirmations', { ...held, sign: { secret: engineer.secret, statement } });
  await page.reload();
  await page.getByText('confirmed against it by Sennet Aurlo').waitFor();
  await sign(page, 'Sign the card');
  await said(page).waitFor();
});

it('the start valve card is started at its procedure for one departure, and waits as long as the aircraft shows', async () => {
  await page.goto(`/defects/${defect}/work/80-12-11/1/M2`);
  await page.getByRole('button', { name: 'Start this card' }).click();
  await atStep('Agree the calls');
  await page.getByLabel('Second person, there with you').selectOption({ label: 'Hebba Strinn, commander' });
  await press('Done');
  await page.getByText('1 step is done').click();
  await page.getByText(/^done: Odrin Vask with Hebba Strinn/).waitFor();
  await atStep('Hang the START BY HAND tag');
  await press('It is fitted', { 'Number read on the START BY HAND tag': 'T-4' });
  await atStep('Read the starter cooling time');
  await press('Begin: the time counts from now', { Minutes: '7' });
  await page.getByText(/^(7:00|6:5\d) left$/).waitFor();
  pass(7);
  await press('The time is over');
  await atStep('Release the latches');
  await press('It is unlatched', { 'How many unlatched, of 3': '3' });
  await atStep('Open the access door');
  await press('It is open');
  await atStep('Have the flight deck read');
  await press('Read', { 'duct pressure, psi': '38' });
  await atStep('On the call "open"');
  expect(await faults(page)).toEqual([]);
  await press('Done');
  await atStep('On the call "close"');
  await press('Done');
  await atStep('Close the access door');
});

it('the door and the tag that are forgotten are named; with both counted in the card is signed', async () => {
  await sign(page, 'Sign the card');
  expect(
    await stopped(
      'still open: start valve access door',
      'still unlatched: 3 access door latches',
      'still fitted: START BY HAND tag',
    ),
  ).toEqual([]);
  await press('It is closed');
  await atStep('Latch the access door');
  await press('It is latched', { 'How many latched, of 3': '3' });
  await atStep('Leave by the cleared path');
  await press('Done');
  await atStep('Have the tag taken off');
  await page.getByLabel('Second person, there with you').selectOption({ label: 'Hebba Strinn, commander' });
  await press('It is removed', { 'Number read on the START BY HAND tag': 'T-4' });
  await expect.poll(() => page.getByText('Counted out: 0').count(), PATIENT).toBe(1);
  await sign(page, 'Sign the card');
  await said(page).waitFor();
});
