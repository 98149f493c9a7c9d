/** What goes wrong at a gate: the page says what, why and what to do next, and loses nothing that was typed. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Shapes } from '../support/api-client.js';
import { aSite, clockFrom, faults, missing, NARROW, PATIENT, said, secret, sign, type Site, goOver } from './site.js';

let site: Site;
let page: Page;

beforeAll(async () => {
  site = await aSite({ now: clockFrom('2026-11-25T09:00:00Z') });
  page = await site.as('odrin', { viewport: NARROW });
});

afterAll(() => site.stop());

async function itemOf(registration: string): Promise<Shapes['DefectLine']> {
  const control = await site.server.signIn('brask');
  const { defects } = await control.get<Shapes['DefectList']>('/api/defects');
  const found = defects.find((one) => one.registration === registration);
  if (!found) throw new Error(`${registration} has no open item.`);
  return found;
}

it('a wrong secret signs nothing, and only the secret is asked for again', async () => {
  const { id } = await itemOf('Q-KEB');
  await page.goto(`/defects/${id}/rectification`);
  await page.getByLabel('What was done').fill('Fuel filter of engine 1 replaced.');
  await page.getByLabel('Manual reference, with revision').fill('K-AMM 73-21-11 task 3');
  await page.getByLabel('Your secret, to sign this').fill('another secret');
  await page.getByRole('button', { name: 'Sign: work done' }).click();
  const problem = page.getByRole('alert');
  expect(await missing(problem, 'The secret is not right, so nothing was signed')).toEqual([]);
  expect(await missing(problem, 'Enter your own secret again.')).toEqual([]);
  await expect.poll(() => page.evaluate('document.activeElement.type'), PATIENT).toBe('password');
  expect(await page.getByLabel('What was done').inputValue()).toBe('Fuel filter of engine 1 replaced.');
  expect(await faults(page)).toEqual([]);
});

it('an item that somebody changed meanwhile is read again, and what was typed is signed then', async () => {
  const { id } = await itemOf('Q-KEB');
  const other = await site.server.signIn('wick');
  const identified = { entry: '73-33-11', units: ['1'] };
  await other.post(`/api/defects/${id}/identification`, identified, { ifMatch: await other.seen(id) });
  await sign(page, 'Sign: work done');
  expect(await missing(page.getByRole('alert'), 'Somebody changed it meanwhile')).toEqual([]);
  expect(await faults(page)).toEqual([]);
  await page.getByRole('button', { name: 'Read it again' }).click();
  await page.getByText('Fuel filter bypass indication, 1').waitFor();
  expect(await page.getByLabel('What was done').inputValue()).toBe('Fuel filter of engine 1 replaced.');
  await sign(page, 'Sign: work done');
  await said(page).getByText('The work is signed.').waitFor();
});

it('a release is refused while something is left on the aircraft, and leads to where it is undone', async () => {
  const { id } = await itemOf('Q-KEO');
  await page.goto(`/defects/${id}/rectification`);
  await page.getByLabel('What was done').fill('Start valve of engine 2 replaced.');
  await page.getByLabel('Manual reference, with revision').fill('K-AMM 80-12-11 task 9');
  await page.getByLabel('A test is asked for').uncheck();
  await sign(page, 'Sign: work done');
  await said(page).waitFor();
  await page.getByRole('link', { name: 'Release', exact: true }).click();
  expect(await missing(page, 'Still left on the aircraft for this item:', 'Connector capped, K-0077')).toEqual([]);
  await goOver(page);
  await sign(page, 'Sign: release to service');
  const problem = page.getByRole('alert');
  expect(await missing(problem, /K-0077/)).toEqual([]);
  expect(await missing(problem, 'What to do:')).toEqual([]);
  expect(await faults(page)).toEqual([]);
  await page.getByRole('link', { name: 'Undo what is left' }).click();
  await page.getByLabel(/Connector capped, K-0077/).waitFor();
  expect(await faults(page)).toEqual([]);
});

it('an act whose answer is lost on the way is sent again under the same key, and is done once', async () => {
  await page.goto('/aircraft');
  await page.getByRole('link', { name: /Q-KEA/ }).click();
  await page.getByRole('link', { name: 'Write up a defect' }).click();
  await page.getByLabel('What is wrong').fill('Reading light 4A flickers.');
  const keys: (string | undefined)[] = [];
  await page.route('**/api/defects', async (route) => {
    keys.push(route.request().headers()['idempotency-key']);
    await route.fetch();
    if (keys.length === 1) await route.abort('connectionfailed');
    else await route.continue();
  });
  await page.getByRole('button', { name: 'Write it up' }).click();
  expect(await missing(page.getByRole('alert'), 'It is not known whether this arrived.')).toEqual([]);
  expect(await page.getByLabel('What is wrong').inputValue()).toBe('Reading light 4A flickers.');
  await page.getByRole('button', { name: 'Write it up' }).click();
  await said(page).getByText('Written up as Q-KEA/2.').waitFor();
  expect(new Set(keys).size).toBe(1);
  await page.unroute('**/api/defects');
  const control = await site.server.signIn('brask');
  const { defects } = await control.get<Shapes['DefectList']>('/api/defects');
  expect(defects.filter(({ registration }) => registration === 'Q-KEA')).toHaveLength(1);
});

it('what was changed after a lost answer is not sent as if it were the same', async () => {
  await page.goto('/aircraft');
  await page.getByRole('link', { name: /Q-KEC/ }).click();
  await page.getByRole('link', { name: 'Write up a defect' }).click();
  await page.getByLabel('What is wrong').fill('Reading light 7C flickers.');
  await page.route('**/api/defects', async (route) => {
    await route.fetch();
    await route.abort('connectionfailed');
  });
  await page.getByRole('button', { name: 'Write it up' }).click();
  expect(await missing(page.getByRole('alert'), 'It is not known whether this arrived.')).toEqual([]);
  await page.unroute('**/api/defects');
  await page.getByLabel('What is wrong').fill('Reading light 7C is dark.');
  await page.getByRole('button', { name: 'Write it up' }).click();
  expect(await missing(page.getByRole('alert'), 'What you sent before arrived after all and was done.')).toEqual([]);
});

it('a field that is refused says so beside itself', async () => {
  await page.goto('/aircraft');
  await page.getByRole('link', { name: /Q-KEA/ }).click();
  await page.getByRole('link', { name: 'Write up a defect' }).click();
  await page.getByLabel('What is wrong').fill('   ');
  await page.getByRole('button', { name: 'Write it up' }).click();
  expect(await missing(page.getByRole('alert'), 'description is blank')).toEqual([]);
  const field = page.getByLabel('What is wrong');
  expect(await field.getAttribute('aria-invalid')).toBe('true');
  const said = await field.getAttribute('aria-describedby');
  expect(await page.locator(`[id="${said?.split(' ').at(-1)}"]`).innerText()).toContain('blank');
  expect(await faults(page)).toEqual([]);
});

it('a session that ended keeps what was typed until somebody signs in again in another tab', async () => {
  await page.getByLabel('What is wrong').fill('Seat 3B does not recline.');
  await page.context().clearCookies();
  await page.getByRole('button', { name: 'Write it up' }).click();
  expect(await missing(page.getByRole('alert'), 'Nobody is signed in')).toEqual([]);
  const tab = page.waitForEvent('popup');
  await page.getByRole('link', { name: 'Sign in in another tab' }).click();
  const other = await page.context().newPage();
  await (await tab).close();
  await other.goto('/');
  await other.getByLabel('Sign-in name').fill('odrin');
  await other.getByLabel('Secret').fill(secret);
  await other.getByRole('button', { name: 'Sign in' }).click();
  await other.getByRole('navigation', { name: 'Places' }).waitFor();
  await page.getByRole('button', { name: 'Write it up' }).click();
  expect(await missing(said(page), /^Written up as Q-KEA/)).toEqual([]);
});

it('somebody whose authorisation has run out is told so, and whom to ask', async () => {
  const dalm = await site.as('dalm', { viewport: NARROW });
  const { id } = await itemOf('Q-KED');
  await dalm.goto(`/defects/${id}/work/30-11-21/1/M1`);
  await dalm.getByLabel('Number on its collar, streamer or label').fill('V-0700');
  await sign(dalm, 'Sign: M1 done');
  await dalm.getByRole('alert').getByText('Ask somebody whose authorisation is valid.').waitFor();
  expect(await dalm.getByLabel('Number on its collar, streamer or label').inputValue()).toBe('V-0700');
});

it('a name or secret that is not right signs nobody in', async () => {
  const visitor = await site.visitor({ viewport: NARROW });
  await visitor.getByLabel('Sign-in name').fill('odrin');
  await visitor.getByLabel('Secret').fill('guess');
  await visitor.getByRole('button', { name: 'Sign in' }).click();
  await visitor.getByRole('alert').getByText('Name or secret is not right').waitFor();
  expect(await visitor.getByLabel('Sign-in name').inputValue()).toBe('odrin');
  expect(await faults(visitor)).toEqual([]);
});
