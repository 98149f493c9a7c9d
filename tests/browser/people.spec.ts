/** Who sees what: two operators of one person, questions put to roles, and a judgement that only control gives. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { aSite, clockFrom, DESK, faults, said, missing, sign, type Site } from './site.js';

let site: Site;

beforeAll(async () => {
  site = await aSite({ now: clockFrom('2026-11-25T09:00:00Z') });
});

afterAll(() => site.stop());

it('somebody who works for two operators chooses one, and may change to the other', async () => {
  const page = await site.visitor();
  await page.getByLabel('Sign-in name').fill('ilva');
  await page.getByLabel('Secret').fill(site.server.visitor().secret);
  await page.getByRole('button', { name: 'Sign in' }).click();
  await page.getByRole('button', { name: /Sallowby Feeder/ }).click();
  await page.getByRole('link', { name: /Q-SBA/ }).waitFor();
  expect(await missing(page, 'Which aircraft?')).toEqual([]);
  expect(await page.locator('body').innerText()).toContain('Legal original: this electronic record.');
  expect(await page.getByRole('link', { name: /Q-KEA/ }).count()).toBe(0);
  await page.getByRole('link', { name: 'Change operator' }).click();
  await page.getByRole('button', { name: /Orrinfell Air/ }).click();
  await page.getByRole('link', { name: /Q-KEA/ }).waitFor();
  expect(await page.getByRole('link', { name: /Q-SBA/ }).count()).toBe(0);
  await page.getByRole('button', { name: 'Sign out' }).click();
  await page.getByRole('heading', { name: 'Sign in' }).waitFor();
});

/** Opens the last planned flight of the aircraft: nobody has answered about its weather yet. */
async function lastFlight(page: Page, registration: string): Promise<void> {
  await page.goto('/aircraft');
  await page.getByRole('link', { name: new RegExp(registration) }).click();
  const after = page.getByText(/^The flights after it/);
  await after.waitFor();
  if ((await page.locator('a.flight').count()) === 0) await after.click();
  await page.locator('a.flight').last().click();
  await page.getByRole('region', { name: /^Answer for/ }).waitFor();
}

it('a question of the weather is not put to the technician, who is told whom to ask', async () => {
  const page = await site.as('odrin');
  await lastFlight(page, 'Q-KED');
  expect(await missing(page, 'not settled', 'One question is open', 'Ask dispatcher or commander.')).toEqual([]);
  expect(await page.getByRole('button', { name: 'Answer' }).count()).toBe(0);
  expect(await faults(page)).toEqual([]);
});

it('the dispatcher answers it with a forecast that reaches far enough, and the answer is there at once', async () => {
  const page = await site.as('jorik', { viewport: DESK });
  await lastFlight(page, 'Q-KED');
  expect(await missing(page, 'Such an answer is good for 6 hours, unless its source says until when.')).toEqual([]);
  await page.getByLabel('Date it is good until, UTC').fill('2026-11-27');
  await page.getByLabel('Time it is good until, UTC').fill('1200');
  await page.getByLabel('none', { exact: true }).check();
  await page.getByLabel('Where the answer comes from').fill('Forecast 25 Nov 06:00');
  expect(await faults(page)).toEqual([]);
  await page.getByRole('button', { name: 'Answer' }).click();
  const answer = page.getByRole('region', { name: /^Answer for/ });
  await answer.getByText('may fly', { exact: true }).waitFor();
  await answer.getByText('What this was made from').first().click();
  expect(await missing(page, 'source: Forecast 25 Nov 06:00')).toEqual([]);
});

it('control says no to the combination for one flight, signed, and the aircraft may not fly it', async () => {
  const page = await site.as('brask', { viewport: DESK });
  await lastFlight(page, 'Q-KED');
  expect(await missing(page, 'Brask Ondelly (maintenance control) accepted it')).toEqual([]);
  await page.getByText('Judge it anew').click();
  await page.getByLabel('no, not accepted').check();
  await page.getByText('My answer is no.').waitFor();
  await page.getByLabel('Why', { exact: false }).last().fill('Night approach over the ridge.');
  expect(await faults(page)).toEqual([]);
  await sign(page, 'Sign the judgement');
  const answer = page.getByRole('region', { name: /^Answer for/ });
  await answer.getByText('may not fly', { exact: true }).waitFor();
});

it('a write-up is answered by no fault found, with what was checked', async () => {
  const page = await site.as('odrin');
  await page.goto('/defects');
  await page.getByRole('link', { name: 'Q-KEB/1' }).click();
  await page.getByRole('link', { name: 'No fault found' }).click();
  await page.getByLabel('What was checked').fill('Filter and switch checked, ground run: no bypass.');
  await page.getByLabel('Manual reference, with revision').fill('K-AMM 73-33-11 task 2, revision 12');
  expect(await faults(page)).toEqual([]);
  await sign(page, 'Sign: no fault found');
  expect(await missing(said(page), 'Answered: no fault found.')).toEqual([]);
  expect(await missing(page, 'closed')).toEqual([]);
});

it('a defect that the MEL does not list is deferred on another document, with its own limit', async () => {
  const page = await site.as('odrin');
  await page.goto('/aircraft');
  await page.getByRole('link', { name: /Q-KEA/ }).click();
  await page.getByRole('link', { name: 'Write up a defect' }).click();
  await page.getByLabel('What is wrong').fill('Dent in the left wing root fairing, 3 mm deep.');
  await page.getByRole('button', { name: 'Write it up' }).click();
  await page.getByRole('link', { name: 'Defer on another document' }).click();
  await page.getByLabel('A limit in approved data').check();
  await page.getByLabel('Number or manual reference, with revision').fill('K-SRM 57-10 fig. 3, revision 4');
  await page.getByLabel('Issued by').fill('the manufacturer');
  await page
    .getByLabel('The limit in its own terms')
    .fill('Dents up to 4 mm, no crack, inspect within 50 flight hours.');
  await page.getByLabel('Interval').fill('50 flight-hours');
  await page.getByText('on the basis of approved data K-SRM 57-10 fig. 3, revision 4').waitFor();
  expect(await faults(page)).toEqual([]);
  await sign(page, 'Sign: defer');
  expect(await missing(said(page), 'Deferred under approved data K-SRM 57-10 fig. 3, revision 4.')).toEqual([]);
});

it('what an item brings along is signed on its page, until the answer asks for no more', async () => {
  const page = await site.as('odrin');
  await page.goto('/defects');
  await page.getByRole('link', { name: 'Q-KEP/1' }).click();
  for (const [placard, tag] of [
    ['APU GEN INOP', 'P-2300'],
    ['APU BLEED INOP', 'P-2301'],
  ] as const) {
    await page.getByRole('link', { name: `placard "${placard}"` }).click();
    expect(await missing(page, placard)).toEqual([]);
    await page.getByLabel('Number on the placard').fill(tag);
    await sign(page, 'Sign: placard fitted');
    expect(await missing(said(page), `Placard ${tag} is signed.`)).toEqual([]);
  }
  expect(await missing(page, 'Next flight', 'may fly')).toEqual([]);
  expect(await page.getByText('To do for this item before it').count()).toBe(0);
});

it('the status sheet shows limits, deadlines and what is left, and prints without buttons', async () => {
  const page = await site.as('odrin');
  await page.goto('/aircraft');
  await page.getByRole('link', { name: /Q-KEP/ }).click();
  await page.getByRole('link', { name: 'Status sheet' }).click();
  expect(
    await missing(page, /^As of 25 Nov 2026/, 'Breaker pulled and collared, C-0930', '2 of 6 flights left.'),
  ).toEqual([]);
  expect(
    await missing(page, 'The diversion time is 120 minutes or less', 'Placard fitted: OVEN INOP - DO NOT USE'),
  ).toEqual([]);
  await page.emulateMedia({ media: 'print' });
  expect(await page.getByRole('button').count()).toBe(0);
  expect(await page.getByRole('navigation').count()).toBe(0);
});

it('one of many is found by any words of theirs, and the others come back', async () => {
  const page = await site.as('wenna');
  await page.goto('/people');
  const people = page.locator('li.card > h2');
  await people.first().waitFor();
  const all = await people.count();
  await page.getByLabel('Find').fill('vask QX.66.20417');
  await page.getByText(`1 of ${all}`, { exact: true }).waitFor();
  expect(await people.allInnerTexts()).toEqual(['Odrin Vask']);
  expect(await faults(page)).toEqual([]);
  await page.getByLabel('Find').fill('nobody of that name');
  await page.getByText(`None of ${all}`, { exact: true }).waitFor();
  await page.getByLabel('Find').fill('');
  await expect.poll(() => people.count()).toBe(all);
  await page.goto('/defects');
  await page.getByLabel('Find').fill('qkep');
  await page.getByText(/^3 of \d+$/).waitFor();
});
