/**
 * A work card as a technician works it on a telephone: the filter of a hydraulic pump. With everything right; and each
 * thing that can be forgotten is stopped by a sentence that names it.
 */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { CardsAtWork } from './cards-at-work.js';
import { faults, missing, said, sign } from './site.js';

let work: CardsAtWork;
let page: Page;
let defect: string;

const atStep = (text: string) => work.atStep(text);
const press = (button: string, fields?: Record<string, string>) => work.press(button, fields);
const stopped = (...words: (string | RegExp)[]) => work.stopped(...words);
const unsaid = (...whole: string[]) => work.unsaid(...whole);
const signsBeside = (named: string, own?: string) => work.signsBeside(named, own);
const pass = (minutes: number) => work.pass(minutes);
const open = () =>
  page
    .getByRole('region', { name: /^It can be signed once/ })
    .getByRole('listitem')
    .allInnerTexts();

/** Whether the end of the wait cannot be pressed, and why. */
async function held(): Promise<[boolean, string | null]> {
  const button = page.getByRole('button', { name: 'The time is over', exact: true });
  const why = await button.getAttribute('aria-describedby');
  return [await button.isDisabled(), why && (await page.locator(`[id="${why}"]`).innerText())];
}

beforeAll(async () => {
  work = await CardsAtWork.begin('2026-11-25T09:00:00Z');
  ({ page } = work);
});

afterAll(() => work.stop());

it('the technician finds the filter card at the item, and starts it', async () => {
  defect = await work.writtenUp('29-13-11', '1');
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
  expect(await held()).toEqual([true, expect.stringMatching(/^Its time is over at .* cannot be ended\.$/)]);
  const asked = page.waitForRequest(/\/cards\/[^/]+$/);
  const shown = await work.setsDeviceAhead();
  await asked;
  expect(shown.filter((text) => !/^[56]:\d\d left$/.test(text))).toEqual([]);
  expect(await faults(page)).toEqual([]);
  pass(6);
  await page.reload();
  await page.getByText('The time is over.').waitFor();
  expect(await held()).toEqual([false, null]);
  await press('The time is over');
  await atStep('Remove the filter bowl');
});

it('the seals are not left out: what comes after names them', async () => {
  await press('Done');
  await atStep('Fit a new filter element');
  await press('Renewed', {
    'Part number of the new case-drain filter element': 'KF-1',
    'Batch or serial number': 'B-1',
    'Number of its release certificate': 'RC-71',
  });
  await atStep('Renew both bowl seals');
  await page.getByText(/steps come later$/).click();
  await page
    .locator('.card-steps > li')
    .filter({ hasText: /^Take the torque wrench/ })
    .getByRole('button')
    .click();
  await press('It is issued', { 'Number read on the torque wrench': 'TW-3' });
  const seals = 'step 9 "Renew both bowl seals. Old seals are not used again"';
  expect(
    await unsaid(
      `Step 10 "Take the torque wrench from the store" comes after steps that are not done: ${seals}.`,
      `What to do: Do first: ${seals}.`,
    ),
  ).toEqual([]);
  await page
    .locator('.card-steps > li')
    .filter({ hasText: 'Renew both bowl seals' })
    .first()
    .getByRole('button')
    .click();
  const seal = { 'Part number of the new bowl seal': 'KS-2', 'Batch, serial or certificate number': 'B-2' };
  await press('Renewed', { ...seal, 'How many renewed, of 2': '1' });
  expect(
    await unsaid(
      'Step 9 "Renew both bowl seals. Old seals are not used again" renews 2 of bowl seal; 1 are named.',
      'What to do: Renew all 2 and enter their part number and batch. This step cannot be left out.',
    ),
  ).toEqual([]);
  await press('Renewed', { ...seal, 'How many renewed, of 2': '2' });
  await atStep('Take the torque wrench');
  await press('It is issued', { 'Number read on the torque wrench': 'TW-3' });
  await atStep('Tighten the bowl');
});

it('a wrench whose calibration is past is not used; the one that was issued is', async () => {
  const until = 'torque wrench, 10 to 50 Nm calibrated until';
  await page.getByText('TW-3, issued by this card').waitFor();
  await press('Read', { 'torque of the bowl, Nm': '26', [until]: '2026-11-24' });
  expect(
    await unsaid(
      'Step 11 "Tighten the bowl and read the torque": the calibration of torque wrench, 10 to 50 Nm TW-3 ended on 2026-11-24; it is used on 2026-11-25.',
    ),
  ).toEqual([]);
  await page.getByLabel(until).fill('2027-02-01');
});

it('a value outside the limits of the card does not go on', async () => {
  await press('Read', { 'torque of the bowl, Nm': '29' });
  expect(
    await unsaid(
      'Step 11 "Tighten the bowl and read the torque": torque of the bowl reads 29 Nm; the card allows 24 to 28 Nm.',
    ),
  ).toEqual([]);
  await press('Read', { 'torque of the bowl, Nm': '26' });
  await atStep('Bring the torque wrench back');
  await press('It is returned', { 'Number read on the torque wrench': 'TW-33' });
  expect(
    await unsaid(
      'Step 12 "Bring the torque wrench back to the store": number TW-33 is not torque wrench that is still there: torque wrench at right wing root (TW-3).',
    ),
  ).toEqual([]);
  await press('It is returned', { 'Number read on the torque wrench': 'TW-3' });
  await atStep('Wipe the bay dry');
  await press('Done');
});

it('the collar that comes off is the one that went on', async () => {
  await atStep('Remove the collar');
  await press('It is reset', { 'Number read on the pump breaker with its collar': 'C-21' });
  expect(
    await unsaid(
      'Step 14 "Remove the collar and reset the pump breaker": number C-21 is not pump breaker with its collar that is still there: pump breaker with its collar at main equipment bay, panel P3, B1 (C-22).',
      'What to do: Undo the one that is still there, read its number and enter it.',
    ),
  ).toEqual([]);
  expect(await page.getByRole('button', { name: 'Sign the card' }).count()).toBe(0);
  expect((await open()).slice(0, 5)).toEqual([
    'still pulled: pump breaker with its collar at main equipment bay, panel P3, B1 (C-22)',
    'still fitted: DO NOT PRESSURISE placard at flight deck, hydraulic panel (P-7)',
    'still open: access panel 197 of the pump bay at right wing root',
    'still unlatched: 6 latches of panel 197 at right wing root',
    'not done: step 15 "Run the pump on the ground and watch bowl and lines"',
  ]);
  await press('It is reset', { 'Number read on the pump breaker with its collar': 'C-22' });
});

it('a leak check cut short is refused, and its readings and the look afterwards are asked for', async () => {
  await atStep('Run the pump');
  const gauge = { 'Number read on the hydraulic pressure gauge': 'HG-4' };
  const until = { 'hydraulic pressure gauge calibrated until': '2027-01-31' };
  await signsBeside('Tamsel Quorry, technician', 'not what Tamsel chose');
  await press('Begin: the time counts from now', { ...gauge, ...until });
  expect(await stopped('is not the secret of Tamsel Quorry', 'Tamsel Quorry enters their own secret again.')).toEqual(
    [],
  );
  expect(await faults(page)).toEqual([]);
  await signsBeside('Tamsel Quorry, technician');
  await press('Begin: the time counts from now');
  await page.getByText(/left$/).waitFor();
  const read = { 'system pressure, psi': '3000', 'case temperature, C': '81' };
  expect(await held()).toEqual([true, expect.stringMatching(/^Its time is over at/)]);
  pass(5);
  await page.reload();
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
  expect(
    await unsaid(
      'Odrin Vask had a hand in step 8 "Fit a new filter element"; step 9 "Renew both bowl seals. Old seals are not used again"; step 11 "Tighten the bowl and read the torque"; step 15 "Run the pump on the ground and watch bowl and lines" and cannot inspect it in step 17 "A second person sees element, seals and bowl: locked, tight, dry".',
      'What to do: Ask a second qualified person to look and to sign that step.',
    ),
  ).toEqual([]);
  const wick = await work.site.as('wick');
  await wick.goto(page.url());
  const second = wick.locator('.card-steps > li.now');
  await second.getByLabel('What you looked at and found').fill('Tight and dry.');
  await sign(second as unknown as Page, 'Sign the inspection');
  await second.getByText('Close panel 197').waitFor();
  await page.reload();
  await atStep('Close panel 197');
});

it('the panel, its latches and the placard that are forgotten are named, one latch too', async () => {
  expect(await page.getByRole('button', { name: 'Sign the card' }).count()).toBe(0);
  expect(await open()).toEqual([
    'still fitted: DO NOT PRESSURISE placard at flight deck, hydraulic panel (P-7)',
    'still open: access panel 197 of the pump bay at right wing root',
    'still unlatched: 6 latches of panel 197 at right wing root',
    'not done: step 21 "Read the hydraulic quantity"',
  ]);
  expect(await faults(page)).toEqual([]);
  await press('It is closed');
  await atStep('Latch panel 197');
  await press('It is latched', { 'How many latched, of 6': '5' });
  expect(
    await unsaid(
      'Step 19 "Latch panel 197": 5 of 6 latches of panel 197 latched; missing: 1 of latches of panel 197 at right wing root.',
      'What to do: Find every one before you go on.',
    ),
  ).toEqual([]);
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
